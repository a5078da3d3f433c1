-- AlterTable
ALTER TABLE "Hold" ADD COLUMN     "cause" TEXT NOT NULL DEFAULT '';

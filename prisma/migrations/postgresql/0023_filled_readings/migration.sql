-- AlterTable
ALTER TABLE "Reading" ADD COLUMN     "filled" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "Engine" ADD COLUMN     "valvesInBlock" BOOLEAN NOT NULL DEFAULT false;

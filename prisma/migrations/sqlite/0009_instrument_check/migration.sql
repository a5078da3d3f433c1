-- AlterTable
ALTER TABLE "ReadingSet" ADD COLUMN "instrumentCheckedOn" TEXT;

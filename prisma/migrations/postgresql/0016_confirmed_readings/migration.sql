-- AlterTable
ALTER TABLE "Reading" ADD COLUMN     "confirmed" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "heldAgainst" TEXT;

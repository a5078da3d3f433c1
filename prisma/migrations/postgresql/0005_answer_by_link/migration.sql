-- AlterTable
ALTER TABLE "Finding" ADD COLUMN     "answeredLinkId" TEXT,
ADD COLUMN     "taxBasisPoints" INTEGER NOT NULL DEFAULT 0;

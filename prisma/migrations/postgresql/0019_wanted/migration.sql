-- AlterTable
ALTER TABLE "CastingRecord" ADD COLUMN     "wanted" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "wanted" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Visit" ADD COLUMN     "wanted" TEXT NOT NULL DEFAULT '';

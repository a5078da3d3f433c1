-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "benchQuery" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "Job_estimateId_idx" ON "Job"("estimateId");

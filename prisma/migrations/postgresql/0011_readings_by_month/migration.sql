-- DropIndex
DROP INDEX "ReadingSet_stepId_recordedAt_idx";

-- CreateIndex
CREATE INDEX "ReadingSet_recordedAt_idx" ON "ReadingSet"("recordedAt");

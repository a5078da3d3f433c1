-- DropIndex
DROP INDEX "ReadingSet_recordedAt_idx";

-- CreateIndex
CREATE INDEX "ReadingSet_recordedAt_stepId_idx" ON "ReadingSet"("recordedAt", "stepId");

-- CreateIndex
CREATE INDEX "Finding_answeredAt_idx" ON "Finding"("answeredAt");

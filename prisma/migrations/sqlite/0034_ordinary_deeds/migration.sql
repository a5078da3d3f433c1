-- CreateTable
CREATE TABLE "FindingAnswer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "findingId" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "answeredAt" DATETIME,
    "answeredBy" TEXT NOT NULL,
    "answeredLinkId" TEXT,
    "reason" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "changedById" TEXT NOT NULL,
    CONSTRAINT "FindingAnswer_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "Finding" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable
ALTER TABLE "Job" ADD COLUMN "cancelledAt" DATETIME;
ALTER TABLE "Job" ADD COLUMN "cancelReason" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Visit" ADD COLUMN "takenOffAt" DATETIME;
ALTER TABLE "Visit" ADD COLUMN "takenOffWhy" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "FindingAnswer_findingId_idx" ON "FindingAnswer"("findingId");

-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "cancelReason" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "cancelledAt" TIMESTAMP(3);

-- AlterTable
ALTER TABLE "Visit" ADD COLUMN     "takenOffAt" TIMESTAMP(3),
ADD COLUMN     "takenOffWhy" TEXT NOT NULL DEFAULT '';

-- CreateTable
CREATE TABLE "FindingAnswer" (
    "id" TEXT NOT NULL,
    "findingId" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "answeredAt" TIMESTAMP(3),
    "answeredBy" TEXT NOT NULL,
    "answeredLinkId" TEXT,
    "reason" TEXT NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "changedById" TEXT NOT NULL,

    CONSTRAINT "FindingAnswer_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "FindingAnswer_findingId_idx" ON "FindingAnswer"("findingId");

-- AddForeignKey
ALTER TABLE "FindingAnswer" ADD CONSTRAINT "FindingAnswer_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "Finding"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AlterTable
ALTER TABLE "Vendor" ADD COLUMN     "boxHeads" INTEGER;

-- AlterTable
ALTER TABLE "Visit" ADD COLUMN     "rulesVersion" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Photo" ADD COLUMN     "findingId" TEXT,
ADD COLUMN     "heightPx" INTEGER NOT NULL,
ADD COLUMN     "holdId" TEXT,
ADD COLUMN     "occurrence" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "orderId" TEXT,
ADD COLUMN     "widthPx" INTEGER NOT NULL,
ADD COLUMN     "withdrawnAt" TIMESTAMP(3),
ADD COLUMN     "withdrawnById" TEXT,
ADD COLUMN     "withdrawnWhy" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "OutsideOrder" ADD COLUMN     "freightMinor" INTEGER,
ADD COLUMN     "redoCost" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "redoOfId" TEXT,
ADD COLUMN     "returnTracking" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "OutsideOrderVisit" ADD COLUMN     "rejectedById" TEXT,
ADD COLUMN     "rejectedWhy" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "Photo_findingId_idx" ON "Photo"("findingId");

-- CreateIndex
CREATE INDEX "Photo_sha256_idx" ON "Photo"("sha256");

-- CreateIndex
CREATE INDEX "OutsideOrder_redoOfId_idx" ON "OutsideOrder"("redoOfId");

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "Finding"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_holdId_fkey" FOREIGN KEY ("holdId") REFERENCES "Hold"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "OutsideOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_sha256_fkey" FOREIGN KEY ("sha256") REFERENCES "File"("sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OutsideOrder" ADD CONSTRAINT "OutsideOrder_redoOfId_fkey" FOREIGN KEY ("redoOfId") REFERENCES "OutsideOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Visits that are there keep the rules in force today, under which their routes stand.
UPDATE "Visit" SET "rulesVersion" = COALESCE((SELECT MAX("version") FROM "Settings"), 0);

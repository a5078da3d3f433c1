-- AlterTable
ALTER TABLE "SupplyOrder" ADD COLUMN     "endReason" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "endedAt" TIMESTAMP(3),
ADD COLUMN     "note" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "SupplyLine" DROP COLUMN "visitId",
ADD COLUMN     "waitId" TEXT;

-- CreateTable
CREATE TABLE "SupplyPromise" (
    "id" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "promisedOn" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "SupplyPromise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SupplyHead" (
    "id" TEXT NOT NULL,
    "lineId" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "arrivedAt" TIMESTAMP(3),

    CONSTRAINT "SupplyHead_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "SupplyPromise_orderId_idx" ON "SupplyPromise"("orderId");

-- CreateIndex
CREATE INDEX "SupplyHead_visitId_idx" ON "SupplyHead"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "SupplyHead_lineId_visitId_key" ON "SupplyHead"("lineId", "visitId");

-- CreateIndex
CREATE INDEX "SupplyOrder_vendorId_idx" ON "SupplyOrder"("vendorId");

-- CreateIndex
CREATE INDEX "SupplyOrder_jobId_idx" ON "SupplyOrder"("jobId");

-- CreateIndex
CREATE INDEX "SupplyOrder_arrivedAt_endedAt_idx" ON "SupplyOrder"("arrivedAt", "endedAt");

-- CreateIndex
CREATE INDEX "SupplyLine_waitId_idx" ON "SupplyLine"("waitId");

-- AddForeignKey
ALTER TABLE "SupplyOrder" ADD CONSTRAINT "SupplyOrder_vendorId_fkey" FOREIGN KEY ("vendorId") REFERENCES "Vendor"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyOrder" ADD CONSTRAINT "SupplyOrder_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyPromise" ADD CONSTRAINT "SupplyPromise_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SupplyOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyLine" ADD CONSTRAINT "SupplyLine_variantId_fkey" FOREIGN KEY ("variantId") REFERENCES "CastingVariant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyLine" ADD CONSTRAINT "SupplyLine_waitId_fkey" FOREIGN KEY ("waitId") REFERENCES "PartsWait"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyHead" ADD CONSTRAINT "SupplyHead_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "SupplyLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyHead" ADD CONSTRAINT "SupplyHead_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

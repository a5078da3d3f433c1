-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "dueMinor" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE INDEX "Job_dueMinor_idx" ON "Job"("dueMinor");

-- AlterTable
ALTER TABLE "Finding" ADD COLUMN     "taxName" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "HandOver" ADD COLUMN     "unpaidMinor" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "unpaidReason" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Payment" ADD COLUMN     "method" TEXT NOT NULL DEFAULT 'other';

-- AlterTable
ALTER TABLE "PriceItem" ADD COLUMN     "taxRateId" TEXT;

-- AlterTable
ALTER TABLE "PriceLine" ADD COLUMN     "endReason" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "invoiceId" TEXT,
ADD COLUMN     "quantityThousandths" INTEGER,
ADD COLUMN     "reason" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "taxName" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- Whole pieces become thousandths.
UPDATE "PriceLine" SET "quantityThousandths" = "quantity" * 1000;
ALTER TABLE "PriceLine" ALTER COLUMN "quantityThousandths" SET NOT NULL;
ALTER TABLE "PriceLine" DROP COLUMN "quantity";

-- CreateTable
CREATE TABLE "TaxRate" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "basisPoints" INTEGER NOT NULL,
    "isDefault" BOOLEAN NOT NULL DEFAULT false,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "TaxRate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PaymentVoid" (
    "paymentId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "PaymentVoid_pkey" PRIMARY KEY ("paymentId")
);

-- CreateTable
CREATE TABLE "MoneyPaper" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "invoiceId" TEXT,
    "paymentId" TEXT,
    "facts" TEXT NOT NULL,
    "netMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,
    "totalMinor" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "MoneyPaper_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MoneyPaperFile" (
    "paperId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "MoneyPaperFile_pkey" PRIMARY KEY ("paperId")
);

-- CreateIndex
CREATE UNIQUE INDEX "MoneyPaper_number_key" ON "MoneyPaper"("number");

-- CreateIndex
CREATE UNIQUE INDEX "MoneyPaper_paymentId_key" ON "MoneyPaper"("paymentId");

-- CreateIndex
CREATE INDEX "MoneyPaper_jobId_idx" ON "MoneyPaper"("jobId");

-- CreateIndex
CREATE INDEX "MoneyPaper_customerId_idx" ON "MoneyPaper"("customerId");

-- CreateIndex
CREATE INDEX "MoneyPaper_invoiceId_idx" ON "MoneyPaper"("invoiceId");

-- CreateIndex
CREATE INDEX "MoneyPaper_kind_at_idx" ON "MoneyPaper"("kind", "at");

-- CreateIndex
CREATE INDEX "MoneyPaperFile_sha256_idx" ON "MoneyPaperFile"("sha256");

-- CreateIndex
CREATE INDEX "Payment_at_idx" ON "Payment"("at");

-- CreateIndex
CREATE INDEX "PriceItem_taxRateId_idx" ON "PriceItem"("taxRateId");

-- CreateIndex
CREATE INDEX "PriceLine_invoiceId_idx" ON "PriceLine"("invoiceId");

-- AddForeignKey
ALTER TABLE "PriceItem" ADD CONSTRAINT "PriceItem_taxRateId_fkey" FOREIGN KEY ("taxRateId") REFERENCES "TaxRate"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PriceLine" ADD CONSTRAINT "PriceLine_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "MoneyPaper"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PaymentVoid" ADD CONSTRAINT "PaymentVoid_paymentId_fkey" FOREIGN KEY ("paymentId") REFERENCES "Payment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaper" ADD CONSTRAINT "MoneyPaper_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaper" ADD CONSTRAINT "MoneyPaper_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaper" ADD CONSTRAINT "MoneyPaper_paymentId_fkey" FOREIGN KEY ("paymentId") REFERENCES "Payment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaper" ADD CONSTRAINT "MoneyPaper_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "MoneyPaper"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaperFile" ADD CONSTRAINT "MoneyPaperFile_paperId_fkey" FOREIGN KEY ("paperId") REFERENCES "MoneyPaper"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MoneyPaperFile" ADD CONSTRAINT "MoneyPaperFile_sha256_fkey" FOREIGN KEY ("sha256") REFERENCES "File"("sha256") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What is owed on the jobs that are there: lines with their tax, rounded once a rate, less what was paid.
UPDATE "Job" SET "dueMinor" = (
    SELECT COALESCE(SUM(r."net" + DIV(r."net" * r."rate" + 5000, 10000)), 0)
    FROM (
        SELECT SUM(CAST(p."quantityThousandths" AS BIGINT) / 1000 * p."unitMinor") AS "net", p."taxBasisPoints" AS "rate"
        FROM "PriceLine" p WHERE p."jobId" = "Job"."id" AND p."endedAt" IS NULL GROUP BY p."taxBasisPoints"
    ) r
) - (
    SELECT COALESCE(SUM(CASE WHEN y."kind" = 'refund' THEN -y."minor" ELSE y."minor" END), 0)
    FROM "Payment" y WHERE y."jobId" = "Job"."id"
);

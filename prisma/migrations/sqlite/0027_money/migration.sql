-- CreateTable
CREATE TABLE "TaxRate" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "basisPoints" INTEGER NOT NULL,
    "isDefault" BOOLEAN NOT NULL DEFAULT false,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "PaymentVoid" (
    "paymentId" TEXT NOT NULL PRIMARY KEY,
    "reason" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    CONSTRAINT "PaymentVoid_paymentId_fkey" FOREIGN KEY ("paymentId") REFERENCES "Payment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MoneyPaper" (
    "id" TEXT NOT NULL PRIMARY KEY,
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
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    CONSTRAINT "MoneyPaper_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MoneyPaper_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MoneyPaper_paymentId_fkey" FOREIGN KEY ("paymentId") REFERENCES "Payment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MoneyPaper_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "MoneyPaper" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MoneyPaperFile" (
    "paperId" TEXT NOT NULL PRIMARY KEY,
    "sha256" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "MoneyPaperFile_paperId_fkey" FOREIGN KEY ("paperId") REFERENCES "MoneyPaper" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MoneyPaperFile_sha256_fkey" FOREIGN KEY ("sha256") REFERENCES "File" ("sha256") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
ALTER TABLE "Job" ADD COLUMN "dueMinor" INTEGER NOT NULL DEFAULT 0;
CREATE INDEX "Job_dueMinor_idx" ON "Job"("dueMinor");
ALTER TABLE "Finding" ADD COLUMN "taxName" TEXT NOT NULL DEFAULT '';
ALTER TABLE "HandOver" ADD COLUMN "unpaidMinor" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "HandOver" ADD COLUMN "unpaidReason" TEXT NOT NULL DEFAULT '';
ALTER TABLE "Payment" ADD COLUMN "method" TEXT NOT NULL DEFAULT 'other';
CREATE INDEX "Payment_at_idx" ON "Payment"("at");
ALTER TABLE "PriceItem" ADD COLUMN "taxRateId" TEXT CONSTRAINT "PriceItem_taxRateId_fkey" REFERENCES "TaxRate" ("id") ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE INDEX "PriceItem_taxRateId_idx" ON "PriceItem"("taxRateId");
CREATE TABLE "new_PriceLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "visitId" TEXT,
    "findingId" TEXT,
    "text" TEXT NOT NULL,
    "quantityThousandths" INTEGER NOT NULL,
    "unitMinor" INTEGER NOT NULL,
    "taxBasisPoints" INTEGER NOT NULL,
    "taxName" TEXT NOT NULL DEFAULT '',
    "reason" TEXT NOT NULL DEFAULT '',
    "invoiceId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "endReason" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "PriceLine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PriceLine_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "MoneyPaper" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_PriceLine" ("quantityThousandths", "createdAt", "endedAt", "findingId", "id", "jobId", "taxBasisPoints", "text", "unitMinor", "visitId") SELECT "quantity" * 1000, "createdAt", "endedAt", "findingId", "id", "jobId", "taxBasisPoints", "text", "unitMinor", "visitId" FROM "PriceLine";
DROP TABLE "PriceLine";
ALTER TABLE "new_PriceLine" RENAME TO "PriceLine";
CREATE INDEX "PriceLine_jobId_idx" ON "PriceLine"("jobId");
CREATE INDEX "PriceLine_visitId_idx" ON "PriceLine"("visitId");
CREATE INDEX "PriceLine_invoiceId_idx" ON "PriceLine"("invoiceId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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

-- What is owed on the jobs that are there: lines with their tax, rounded once a rate, less what was paid.
UPDATE "Job" SET "dueMinor" = (
    SELECT COALESCE(SUM(r."net" + (r."net" * r."rate" + 5000) / 10000), 0)
    FROM (
        SELECT SUM(CAST(p."quantityThousandths" AS BIGINT) / 1000 * p."unitMinor") AS "net", p."taxBasisPoints" AS "rate"
        FROM "PriceLine" p WHERE p."jobId" = "Job"."id" AND p."endedAt" IS NULL GROUP BY p."taxBasisPoints"
    ) r
) - (
    SELECT COALESCE(SUM(CASE WHEN y."kind" = 'refund' THEN -y."minor" ELSE y."minor" END), 0)
    FROM "Payment" y WHERE y."jobId" = "Job"."id"
);

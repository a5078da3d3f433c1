-- CreateTable
CREATE TABLE "SupplyPromise" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "orderId" TEXT NOT NULL,
    "promisedOn" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    CONSTRAINT "SupplyPromise_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SupplyOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SupplyHead" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "lineId" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "arrivedAt" DATETIME,
    CONSTRAINT "SupplyHead_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "SupplyLine" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplyHead_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_SupplyOrder" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "vendorId" TEXT NOT NULL,
    "jobId" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "promisedOn" TEXT,
    "arrivedAt" DATETIME,
    "endedAt" DATETIME,
    "endReason" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "SupplyOrder_vendorId_fkey" FOREIGN KEY ("vendorId") REFERENCES "Vendor" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplyOrder_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_SupplyOrder" ("arrivedAt", "byId", "createdAt", "id", "jobId", "number", "promisedOn", "vendorId", "version") SELECT "arrivedAt", "byId", "createdAt", "id", "jobId", "number", "promisedOn", "vendorId", "version" FROM "SupplyOrder";
DROP TABLE "SupplyOrder";
ALTER TABLE "new_SupplyOrder" RENAME TO "SupplyOrder";
CREATE UNIQUE INDEX "SupplyOrder_number_key" ON "SupplyOrder"("number");
CREATE INDEX "SupplyOrder_vendorId_idx" ON "SupplyOrder"("vendorId");
CREATE INDEX "SupplyOrder_jobId_idx" ON "SupplyOrder"("jobId");
CREATE INDEX "SupplyOrder_arrivedAt_endedAt_idx" ON "SupplyOrder"("arrivedAt", "endedAt");
CREATE TABLE "new_SupplyLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "orderId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "variantId" TEXT,
    "waitId" TEXT,
    "quantity" INTEGER NOT NULL,
    "arrived" INTEGER NOT NULL,
    "costMinor" INTEGER,
    CONSTRAINT "SupplyLine_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SupplyOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplyLine_variantId_fkey" FOREIGN KEY ("variantId") REFERENCES "CastingVariant" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplyLine_waitId_fkey" FOREIGN KEY ("waitId") REFERENCES "PartsWait" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_SupplyLine" ("arrived", "costMinor", "id", "kind", "orderId", "quantity", "variantId", "what") SELECT "arrived", "costMinor", "id", "kind", "orderId", "quantity", "variantId", "what" FROM "SupplyLine";
DROP TABLE "SupplyLine";
ALTER TABLE "new_SupplyLine" RENAME TO "SupplyLine";
CREATE INDEX "SupplyLine_orderId_idx" ON "SupplyLine"("orderId");
CREATE INDEX "SupplyLine_waitId_idx" ON "SupplyLine"("waitId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "SupplyPromise_orderId_idx" ON "SupplyPromise"("orderId");

-- CreateIndex
CREATE INDEX "SupplyHead_visitId_idx" ON "SupplyHead"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "SupplyHead_lineId_visitId_key" ON "SupplyHead"("lineId", "visitId");

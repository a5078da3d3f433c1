-- DropIndex
DROP INDEX "CustomerSuffix_customerId_idx";

-- DropIndex
DROP INDEX "HeadSuffix_headId_idx";

-- DropTable
PRAGMA foreign_keys=off;
DROP TABLE "CustomerSuffix";
PRAGMA foreign_keys=on;

-- DropTable
PRAGMA foreign_keys=off;
DROP TABLE "HeadSuffix";
PRAGMA foreign_keys=on;

-- CreateTable
CREATE TABLE "CustomerText" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "customerId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    CONSTRAINT "CustomerText_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CustomerMerge" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fromId" TEXT NOT NULL,
    "intoId" TEXT NOT NULL,
    "jobIds" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "undoneAt" DATETIME,
    "undoneById" TEXT,
    CONSTRAINT "CustomerMerge_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "CustomerMerge_intoId_fkey" FOREIGN KEY ("intoId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "HeadText" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "headId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    CONSTRAINT "HeadText_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Customer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "mergedIntoId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Customer_mergedIntoId_fkey" FOREIGN KEY ("mergedIntoId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Customer" ("createdAt", "id", "version") SELECT "createdAt", "id", "version" FROM "Customer";
DROP TABLE "Customer";
ALTER TABLE "new_Customer" RENAME TO "Customer";
CREATE INDEX "Customer_mergedIntoId_idx" ON "Customer"("mergedIntoId");
CREATE TABLE "new_CustomerContact" (
    "customerId" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "nameLower" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "phoneE164" TEXT NOT NULL DEFAULT '',
    "phoneDigits" TEXT NOT NULL,
    "otherPhone" TEXT NOT NULL DEFAULT '',
    "otherPhoneE164" TEXT NOT NULL DEFAULT '',
    "otherPhoneDigits" TEXT NOT NULL DEFAULT '',
    "email" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "blankedAt" DATETIME,
    CONSTRAINT "CustomerContact_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_CustomerContact" ("address", "blankedAt", "customerId", "email", "name", "nameLower", "phone", "phoneDigits") SELECT "address", "blankedAt", "customerId", "email", "name", "nameLower", "phone", "phoneDigits" FROM "CustomerContact";
DROP TABLE "CustomerContact";
ALTER TABLE "new_CustomerContact" RENAME TO "CustomerContact";
CREATE INDEX "CustomerContact_nameLower_idx" ON "CustomerContact"("nameLower");
CREATE INDEX "CustomerContact_phoneDigits_idx" ON "CustomerContact"("phoneDigits");
CREATE INDEX "CustomerContact_phoneE164_idx" ON "CustomerContact"("phoneE164");
CREATE INDEX "CustomerContact_otherPhoneDigits_idx" ON "CustomerContact"("otherPhoneDigits");
CREATE INDEX "CustomerContact_email_idx" ON "CustomerContact"("email");
CREATE TABLE "new_Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "mode" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "currencyExponent" INTEGER NOT NULL,
    "paper" TEXT NOT NULL,
    "country" TEXT NOT NULL DEFAULT '',
    "logoSha256" TEXT,
    "logoWidthPx" INTEGER,
    "logoHeightPx" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Shop_logoSha256_fkey" FOREIGN KEY ("logoSha256") REFERENCES "File" ("sha256") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Shop" ("address", "createdAt", "currency", "currencyExponent", "id", "locale", "logoHeightPx", "logoSha256", "logoWidthPx", "mode", "name", "paper", "phone", "timeZone", "version") SELECT "address", "createdAt", "currency", "currencyExponent", "id", "locale", "logoHeightPx", "logoSha256", "logoWidthPx", "mode", "name", "paper", "phone", "timeZone", "version" FROM "Shop";
DROP TABLE "Shop";
ALTER TABLE "new_Shop" RENAME TO "Shop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "CustomerText_customerId_key" ON "CustomerText"("customerId");

-- CreateIndex
CREATE INDEX "CustomerMerge_fromId_idx" ON "CustomerMerge"("fromId");

-- CreateIndex
CREATE INDEX "CustomerMerge_intoId_idx" ON "CustomerMerge"("intoId");

-- CreateIndex
CREATE UNIQUE INDEX "HeadText_headId_key" ON "HeadText"("headId");

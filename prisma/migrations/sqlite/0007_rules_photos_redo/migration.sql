-- AlterTable
ALTER TABLE "Vendor" ADD COLUMN "boxHeads" INTEGER;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Visit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "headId" TEXT NOT NULL,
    "pairId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "used" BOOLEAN NOT NULL,
    "cameAssembled" BOOLEAN NOT NULL DEFAULT false,
    "overheated" BOOLEAN NOT NULL DEFAULT false,
    "side" TEXT NOT NULL,
    "cameWith" TEXT NOT NULL,
    "ownedBy" TEXT NOT NULL,
    "rackPlace" TEXT NOT NULL,
    "presentCc" REAL,
    "presentText" TEXT NOT NULL,
    "presentUnit" TEXT NOT NULL,
    "targetCc" REAL,
    "targetText" TEXT NOT NULL,
    "targetUnit" TEXT NOT NULL,
    "comebackOfId" TEXT,
    "comebackCause" TEXT NOT NULL DEFAULT '',
    "comebackPays" TEXT NOT NULL DEFAULT '',
    "scrappedAt" DATETIME,
    "rulesVersion" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Visit_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_pairId_fkey" FOREIGN KEY ("pairId") REFERENCES "Pair" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_comebackOfId_fkey" FOREIGN KEY ("comebackOfId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Visit" ("cameAssembled", "cameWith", "comebackCause", "comebackOfId", "comebackPays", "createdAt", "headId", "id", "jobId", "overheated", "ownedBy", "pairId", "position", "presentCc", "presentText", "presentUnit", "rackPlace", "scrappedAt", "side", "source", "targetCc", "targetText", "targetUnit", "used", "version") SELECT "cameAssembled", "cameWith", "comebackCause", "comebackOfId", "comebackPays", "createdAt", "headId", "id", "jobId", "overheated", "ownedBy", "pairId", "position", "presentCc", "presentText", "presentUnit", "rackPlace", "scrappedAt", "side", "source", "targetCc", "targetText", "targetUnit", "used", "version" FROM "Visit";
DROP TABLE "Visit";
ALTER TABLE "new_Visit" RENAME TO "Visit";
CREATE INDEX "Visit_jobId_idx" ON "Visit"("jobId");
CREATE INDEX "Visit_headId_idx" ON "Visit"("headId");
CREATE INDEX "Visit_pairId_idx" ON "Visit"("pairId");
CREATE TABLE "new_Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL DEFAULT '',
    "findingId" TEXT,
    "holdId" TEXT,
    "orderId" TEXT,
    "sha256" TEXT NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "caption" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "withdrawnAt" DATETIME,
    "withdrawnById" TEXT,
    "withdrawnWhy" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Photo_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Photo_findingId_fkey" FOREIGN KEY ("findingId") REFERENCES "Finding" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Photo_holdId_fkey" FOREIGN KEY ("holdId") REFERENCES "Hold" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Photo_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "OutsideOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Photo_sha256_fkey" FOREIGN KEY ("sha256") REFERENCES "File" ("sha256") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Photo" ("at", "byId", "caption", "id", "sha256", "stepId", "visitId") SELECT "at", "byId", "caption", "id", "sha256", "stepId", "visitId" FROM "Photo";
DROP TABLE "Photo";
ALTER TABLE "new_Photo" RENAME TO "Photo";
CREATE INDEX "Photo_visitId_idx" ON "Photo"("visitId");
CREATE INDEX "Photo_findingId_idx" ON "Photo"("findingId");
CREATE INDEX "Photo_sha256_idx" ON "Photo"("sha256");
CREATE TABLE "new_OutsideOrder" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "vendorId" TEXT NOT NULL,
    "instructions" TEXT NOT NULL,
    "scope" TEXT NOT NULL,
    "finishesToSize" BOOLEAN NOT NULL,
    "freight" TEXT NOT NULL,
    "tracking" TEXT NOT NULL,
    "returnTracking" TEXT NOT NULL DEFAULT '',
    "costMinor" INTEGER,
    "freightMinor" INTEGER,
    "redoOfId" TEXT,
    "redoCost" TEXT NOT NULL DEFAULT '',
    "createdAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "sentAt" DATETIME,
    "acceptedAt" DATETIME,
    "promisedOn" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "OutsideOrder_vendorId_fkey" FOREIGN KEY ("vendorId") REFERENCES "Vendor" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "OutsideOrder_redoOfId_fkey" FOREIGN KEY ("redoOfId") REFERENCES "OutsideOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_OutsideOrder" ("acceptedAt", "byId", "costMinor", "createdAt", "finishesToSize", "freight", "id", "instructions", "number", "promisedOn", "scope", "sentAt", "tracking", "vendorId", "version") SELECT "acceptedAt", "byId", "costMinor", "createdAt", "finishesToSize", "freight", "id", "instructions", "number", "promisedOn", "scope", "sentAt", "tracking", "vendorId", "version" FROM "OutsideOrder";
DROP TABLE "OutsideOrder";
ALTER TABLE "new_OutsideOrder" RENAME TO "OutsideOrder";
CREATE UNIQUE INDEX "OutsideOrder_number_key" ON "OutsideOrder"("number");
CREATE INDEX "OutsideOrder_vendorId_idx" ON "OutsideOrder"("vendorId");
CREATE INDEX "OutsideOrder_redoOfId_idx" ON "OutsideOrder"("redoOfId");
CREATE TABLE "new_OutsideOrderVisit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "orderId" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "angleIn" REAL NOT NULL,
    "flatIn" REAL NOT NULL,
    "comesWith" TEXT NOT NULL,
    "receivedAt" DATETIME,
    "receivedById" TEXT,
    "confirmed" TEXT NOT NULL,
    "seatsIn" BOOLEAN NOT NULL DEFAULT true,
    "marksTyped" TEXT NOT NULL,
    "marksRead" TEXT NOT NULL,
    "rejectedAt" DATETIME,
    "rejectedById" TEXT,
    "rejectedWhy" TEXT NOT NULL DEFAULT '',
    "redoCost" TEXT NOT NULL,
    CONSTRAINT "OutsideOrderVisit_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "OutsideOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "OutsideOrderVisit_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_OutsideOrderVisit" ("angleIn", "comesWith", "confirmed", "flatIn", "id", "marksRead", "marksTyped", "orderId", "receivedAt", "receivedById", "redoCost", "rejectedAt", "seatsIn", "visitId") SELECT "angleIn", "comesWith", "confirmed", "flatIn", "id", "marksRead", "marksTyped", "orderId", "receivedAt", "receivedById", "redoCost", "rejectedAt", "seatsIn", "visitId" FROM "OutsideOrderVisit";
DROP TABLE "OutsideOrderVisit";
ALTER TABLE "new_OutsideOrderVisit" RENAME TO "OutsideOrderVisit";
CREATE INDEX "OutsideOrderVisit_visitId_idx" ON "OutsideOrderVisit"("visitId");
CREATE UNIQUE INDEX "OutsideOrderVisit_orderId_visitId_key" ON "OutsideOrderVisit"("orderId", "visitId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- Visits that are there keep the rules in force today, under which their routes stand.
UPDATE "Visit" SET "rulesVersion" = COALESCE((SELECT MAX("version") FROM "Settings"), 0);

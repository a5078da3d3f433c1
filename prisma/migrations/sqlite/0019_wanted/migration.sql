-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_CastingRecord" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "nameLower" TEXT NOT NULL,
    "material" TEXT NOT NULL,
    "chamberCount" INTEGER NOT NULL,
    "chamberShape" TEXT NOT NULL,
    "deepEdge" TEXT NOT NULL,
    "wanted" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL
);
INSERT INTO "new_CastingRecord" ("chamberCount", "chamberShape", "createdAt", "deepEdge", "id", "material", "name", "nameLower", "note", "retiredAt", "version") SELECT "chamberCount", "chamberShape", "createdAt", "deepEdge", "id", "material", "name", "nameLower", "note", "retiredAt", "version" FROM "CastingRecord";
DROP TABLE "CastingRecord";
ALTER TABLE "new_CastingRecord" RENAME TO "CastingRecord";
CREATE TABLE "new_Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "preset" TEXT NOT NULL,
    "promiseOn" TEXT,
    "urgent" BOOLEAN NOT NULL DEFAULT false,
    "partsPlace" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "classFlatOnly" BOOLEAN NOT NULL DEFAULT false,
    "classMinCc" REAL,
    "classMinText" TEXT NOT NULL DEFAULT '',
    "classMaxCutIn" REAL,
    "classMaxCutText" TEXT NOT NULL DEFAULT '',
    "finishAsked" TEXT NOT NULL DEFAULT '',
    "wanted" TEXT NOT NULL DEFAULT '',
    "pricesOnLink" BOOLEAN NOT NULL DEFAULT false,
    "estimateId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    CONSTRAINT "Job_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Job" ("byId", "classFlatOnly", "classMaxCutIn", "classMaxCutText", "classMinCc", "classMinText", "createdAt", "customerId", "estimateId", "finishAsked", "id", "note", "number", "partsPlace", "preset", "pricesOnLink", "promiseOn", "urgent", "version") SELECT "byId", "classFlatOnly", "classMaxCutIn", "classMaxCutText", "classMinCc", "classMinText", "createdAt", "customerId", "estimateId", "finishAsked", "id", "note", "number", "partsPlace", "preset", "pricesOnLink", "promiseOn", "urgent", "version" FROM "Job";
DROP TABLE "Job";
ALTER TABLE "new_Job" RENAME TO "Job";
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");
CREATE INDEX "Job_customerId_idx" ON "Job"("customerId");
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
    "wanted" TEXT NOT NULL DEFAULT '',
    "scrappedAt" DATETIME,
    "rulesVersion" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Visit_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_pairId_fkey" FOREIGN KEY ("pairId") REFERENCES "Pair" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Visit_comebackOfId_fkey" FOREIGN KEY ("comebackOfId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Visit" ("cameAssembled", "cameWith", "comebackCause", "comebackOfId", "comebackPays", "createdAt", "headId", "id", "jobId", "overheated", "ownedBy", "pairId", "position", "presentCc", "presentText", "presentUnit", "rackPlace", "rulesVersion", "scrappedAt", "side", "source", "targetCc", "targetText", "targetUnit", "used", "version") SELECT "cameAssembled", "cameWith", "comebackCause", "comebackOfId", "comebackPays", "createdAt", "headId", "id", "jobId", "overheated", "ownedBy", "pairId", "position", "presentCc", "presentText", "presentUnit", "rackPlace", "rulesVersion", "scrappedAt", "side", "source", "targetCc", "targetText", "targetUnit", "used", "version" FROM "Visit";
DROP TABLE "Visit";
ALTER TABLE "new_Visit" RENAME TO "Visit";
CREATE INDEX "Visit_jobId_idx" ON "Visit"("jobId");
CREATE INDEX "Visit_headId_idx" ON "Visit"("headId");
CREATE INDEX "Visit_pairId_idx" ON "Visit"("pairId");
CREATE INDEX "Visit_comebackOfId_idx" ON "Visit"("comebackOfId");
CREATE INDEX "Visit_rulesVersion_idx" ON "Visit"("rulesVersion");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

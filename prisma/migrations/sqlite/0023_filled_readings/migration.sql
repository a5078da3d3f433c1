-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Reading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "setId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "point" TEXT NOT NULL,
    "value" REAL,
    "text" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "notTaken" TEXT,
    "correctsId" TEXT,
    "correction" TEXT,
    "reason" TEXT NOT NULL,
    "repeat" TEXT,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,
    "filled" BOOLEAN NOT NULL DEFAULT false,
    "heldAgainst" TEXT,
    CONSTRAINT "Reading_setId_fkey" FOREIGN KEY ("setId") REFERENCES "ReadingSet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Reading" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Reading" ("confirmed", "correction", "correctsId", "heldAgainst", "id", "kind", "notTaken", "point", "reason", "repeat", "setId", "text", "unit", "value") SELECT "confirmed", "correction", "correctsId", "heldAgainst", "id", "kind", "notTaken", "point", "reason", "repeat", "setId", "text", "unit", "value" FROM "Reading";
DROP TABLE "Reading";
ALTER TABLE "new_Reading" RENAME TO "Reading";
CREATE INDEX "Reading_setId_idx" ON "Reading"("setId");
CREATE INDEX "Reading_correctsId_idx" ON "Reading"("correctsId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Finding" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT,
    "what" TEXT NOT NULL,
    "priceMinor" INTEGER,
    "taxBasisPoints" INTEGER NOT NULL DEFAULT 0,
    "addsWork" TEXT NOT NULL,
    "reportedAt" DATETIME NOT NULL,
    "reportedById" TEXT NOT NULL,
    "askedAt" DATETIME,
    "askedHow" TEXT NOT NULL,
    "askedById" TEXT,
    "answer" TEXT,
    "answeredAt" DATETIME,
    "answeredBy" TEXT NOT NULL,
    "answeredLinkId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Finding_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Finding" ("addsWork", "answer", "answeredAt", "answeredBy", "askedAt", "askedById", "askedHow", "id", "priceMinor", "reportedAt", "reportedById", "stepId", "version", "visitId", "what") SELECT "addsWork", "answer", "answeredAt", "answeredBy", "askedAt", "askedById", "askedHow", "id", "priceMinor", "reportedAt", "reportedById", "stepId", "version", "visitId", "what" FROM "Finding";
DROP TABLE "Finding";
ALTER TABLE "new_Finding" RENAME TO "Finding";
CREATE INDEX "Finding_visitId_idx" ON "Finding"("visitId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

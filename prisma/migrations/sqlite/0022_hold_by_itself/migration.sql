-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Hold" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT,
    "reason" TEXT NOT NULL,
    "cause" TEXT NOT NULL DEFAULT '',
    "openedAt" DATETIME NOT NULL,
    "openedById" TEXT NOT NULL,
    "decision" TEXT,
    "decisionNote" TEXT NOT NULL,
    "customerYes" TEXT NOT NULL,
    "decidedAt" DATETIME,
    "decidedById" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Hold_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Hold" ("customerYes", "decidedAt", "decidedById", "decision", "decisionNote", "id", "openedAt", "openedById", "reason", "stepId", "version", "visitId") SELECT "customerYes", "decidedAt", "decidedById", "decision", "decisionNote", "id", "openedAt", "openedById", "reason", "stepId", "version", "visitId" FROM "Hold";
DROP TABLE "Hold";
ALTER TABLE "new_Hold" RENAME TO "Hold";
CREATE INDEX "Hold_visitId_idx" ON "Hold"("visitId");
CREATE INDEX "Hold_decidedAt_openedAt_idx" ON "Hold"("decidedAt", "openedAt");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

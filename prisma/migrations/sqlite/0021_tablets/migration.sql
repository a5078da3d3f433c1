-- AlterTable
ALTER TABLE "Person" ADD COLUMN "pinHash" TEXT;

-- CreateTable
CREATE TABLE "Tablet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "enrolledAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "lastSeenAt" DATETIME NOT NULL,
    "revokedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "TabletCode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "codeHash" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    "byId" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "PinTries" (
    "personId" TEXT NOT NULL,
    "tabletId" TEXT NOT NULL,
    "wrong" INTEGER NOT NULL,
    "lastAt" DATETIME NOT NULL,

    PRIMARY KEY ("personId", "tabletId"),
    CONSTRAINT "PinTries_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PinTries_tabletId_fkey" FOREIGN KEY ("tabletId") REFERENCES "Tablet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'password',
    "tabletId" TEXT,
    "idleMs" INTEGER,
    "createdAt" DATETIME NOT NULL,
    "lastSeenAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "endReason" TEXT,
    CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Session_tabletId_fkey" FOREIGN KEY ("tabletId") REFERENCES "Tablet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Session" ("createdAt", "endReason", "endedAt", "expiresAt", "id", "lastSeenAt", "personId") SELECT "createdAt", "endReason", "endedAt", "expiresAt", "id", "lastSeenAt", "personId" FROM "Session";
DROP TABLE "Session";
ALTER TABLE "new_Session" RENAME TO "Session";
CREATE INDEX "Session_personId_idx" ON "Session"("personId");
CREATE INDEX "Session_tabletId_idx" ON "Session"("tabletId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "Tablet_tokenHash_key" ON "Tablet"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "TabletCode_codeHash_key" ON "TabletCode"("codeHash");

-- CreateIndex
CREATE INDEX "PinTries_tabletId_idx" ON "PinTries"("tabletId");

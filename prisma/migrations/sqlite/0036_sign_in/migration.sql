-- AlterTable
ALTER TABLE "Person" ADD COLUMN "factorDraft" TEXT;
ALTER TABLE "Person" ADD COLUMN "factorKey" TEXT;
ALTER TABLE "Person" ADD COLUMN "factorStep" INTEGER;

-- CreateTable
CREATE TABLE "SignInTries" (
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "wrong" INTEGER NOT NULL,
    "lastAt" DATETIME NOT NULL,

    PRIMARY KEY ("kind", "name", "place")
);

-- CreateTable
CREATE TABLE "KnownDevice" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "markHash" TEXT NOT NULL,
    "lastSeenAt" DATETIME NOT NULL,
    CONSTRAINT "KnownDevice_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ResetLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "byId" TEXT NOT NULL,
    CONSTRAINT "ResetLink_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RecoveryCode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "codeHash" TEXT NOT NULL,
    "usedAt" DATETIME,
    CONSTRAINT "RecoveryCode_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
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
    "askedAt" DATETIME,
    "browser" TEXT NOT NULL DEFAULT '',
    "address" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Session_tabletId_fkey" FOREIGN KEY ("tabletId") REFERENCES "Tablet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Session" ("createdAt", "endReason", "endedAt", "expiresAt", "id", "idleMs", "kind", "lastSeenAt", "personId", "tabletId") SELECT "createdAt", "endReason", "endedAt", "expiresAt", "id", "idleMs", "kind", "lastSeenAt", "personId", "tabletId" FROM "Session";
DROP TABLE "Session";
ALTER TABLE "new_Session" RENAME TO "Session";
CREATE INDEX "Session_personId_idx" ON "Session"("personId");
CREATE INDEX "Session_tabletId_idx" ON "Session"("tabletId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "SignInTries_name_idx" ON "SignInTries"("name");

-- CreateIndex
CREATE INDEX "SignInTries_lastAt_idx" ON "SignInTries"("lastAt");

-- CreateIndex
CREATE UNIQUE INDEX "KnownDevice_personId_markHash_key" ON "KnownDevice"("personId", "markHash");

-- CreateIndex
CREATE UNIQUE INDEX "ResetLink_tokenHash_key" ON "ResetLink"("tokenHash");

-- CreateIndex
CREATE INDEX "ResetLink_personId_idx" ON "ResetLink"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "RecoveryCode_personId_codeHash_key" ON "RecoveryCode"("personId", "codeHash");

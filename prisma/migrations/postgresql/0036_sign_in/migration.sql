-- AlterTable
ALTER TABLE "Person" ADD COLUMN     "factorDraft" TEXT,
ADD COLUMN     "factorKey" TEXT,
ADD COLUMN     "factorStep" INTEGER;

-- AlterTable
ALTER TABLE "Session" ADD COLUMN     "address" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "askedAt" TIMESTAMP(3),
ADD COLUMN     "browser" TEXT NOT NULL DEFAULT '';

-- CreateTable
CREATE TABLE "SignInTries" (
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "wrong" INTEGER NOT NULL,
    "lastAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SignInTries_pkey" PRIMARY KEY ("kind","name","place")
);

-- CreateTable
CREATE TABLE "KnownDevice" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "markHash" TEXT NOT NULL,
    "lastSeenAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "KnownDevice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ResetLink" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),
    "byId" TEXT NOT NULL,

    CONSTRAINT "ResetLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RecoveryCode" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "codeHash" TEXT NOT NULL,
    "usedAt" TIMESTAMP(3),

    CONSTRAINT "RecoveryCode_pkey" PRIMARY KEY ("id")
);

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

-- AddForeignKey
ALTER TABLE "KnownDevice" ADD CONSTRAINT "KnownDevice_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ResetLink" ADD CONSTRAINT "ResetLink_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RecoveryCode" ADD CONSTRAINT "RecoveryCode_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AlterTable
ALTER TABLE "Person" ADD COLUMN     "pinHash" TEXT;

-- AlterTable
ALTER TABLE "Session" ADD COLUMN     "idleMs" INTEGER,
ADD COLUMN     "kind" TEXT NOT NULL DEFAULT 'password',
ADD COLUMN     "tabletId" TEXT;

-- CreateTable
CREATE TABLE "Tablet" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "enrolledAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "lastSeenAt" TIMESTAMP(3) NOT NULL,
    "revokedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Tablet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TabletCode" (
    "id" TEXT NOT NULL,
    "codeHash" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "usedAt" TIMESTAMP(3),
    "byId" TEXT NOT NULL,

    CONSTRAINT "TabletCode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PinTries" (
    "personId" TEXT NOT NULL,
    "tabletId" TEXT NOT NULL,
    "wrong" INTEGER NOT NULL,
    "lastAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "PinTries_pkey" PRIMARY KEY ("personId","tabletId")
);

-- CreateIndex
CREATE UNIQUE INDEX "Tablet_tokenHash_key" ON "Tablet"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "TabletCode_codeHash_key" ON "TabletCode"("codeHash");

-- CreateIndex
CREATE INDEX "PinTries_tabletId_idx" ON "PinTries"("tabletId");

-- CreateIndex
CREATE INDEX "Session_tabletId_idx" ON "Session"("tabletId");

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_tabletId_fkey" FOREIGN KEY ("tabletId") REFERENCES "Tablet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PinTries" ADD CONSTRAINT "PinTries_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PinTries" ADD CONSTRAINT "PinTries_tabletId_fkey" FOREIGN KEY ("tabletId") REFERENCES "Tablet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

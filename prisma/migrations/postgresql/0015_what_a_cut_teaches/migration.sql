-- AlterTable
ALTER TABLE "Reading" ADD COLUMN     "repeat" TEXT;

-- AlterTable
ALTER TABLE "ShopCut" ADD COLUMN     "chambers" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "depthBy" TEXT NOT NULL DEFAULT 'touch-off',
ADD COLUMN     "headId" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "lastPassAt" TIMESTAMP(3),
ADD COLUMN     "questioned" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "questionedAt" TIMESTAMP(3),
ADD COLUMN     "ruling" TEXT,
ADD COLUMN     "rulingAt" TIMESTAMP(3),
ADD COLUMN     "rulingById" TEXT,
ADD COLUMN     "rulingReason" TEXT NOT NULL DEFAULT '';

-- CreateTable
CREATE TABLE "CcRepeats" (
    "visitId" TEXT NOT NULL,
    "squaresCc2" DOUBLE PRECISION NOT NULL,
    "degrees" INTEGER NOT NULL,

    CONSTRAINT "CcRepeats_pkey" PRIMARY KEY ("visitId")
);

-- CreateTable
CREATE TABLE "CcRepeatTotal" (
    "id" TEXT NOT NULL,
    "squaresCc2" DOUBLE PRECISION NOT NULL,
    "degrees" INTEGER NOT NULL,

    CONSTRAINT "CcRepeatTotal_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "ShopCut_headId_idx" ON "ShopCut"("headId");

-- AddForeignKey
ALTER TABLE "CcRepeats" ADD CONSTRAINT "CcRepeats_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A cut made before knows its head by its visit.
UPDATE "ShopCut" SET "headId" = (SELECT "headId" FROM "Visit" WHERE "Visit"."id" = "ShopCut"."visitId");

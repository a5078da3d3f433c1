-- AlterTable
ALTER TABLE "Reading" ADD COLUMN "repeat" TEXT;

-- CreateTable
CREATE TABLE "CcRepeats" (
    "visitId" TEXT NOT NULL PRIMARY KEY,
    "squaresCc2" REAL NOT NULL,
    "degrees" INTEGER NOT NULL,
    CONSTRAINT "CcRepeats_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CcRepeatTotal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "squaresCc2" REAL NOT NULL,
    "degrees" INTEGER NOT NULL
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_ShopCut" (
    "visitId" TEXT NOT NULL PRIMARY KEY,
    "castingId" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "shallowIn" REAL,
    "deepIn" REAL,
    "beforeCc" REAL,
    "uBeforeCc" REAL,
    "afterCc" REAL,
    "uAfterCc" REAL,
    "whyNot" TEXT NOT NULL,
    "headId" TEXT NOT NULL DEFAULT '',
    "depthBy" TEXT NOT NULL DEFAULT 'touch-off',
    "chambers" TEXT NOT NULL DEFAULT '',
    "lastPassAt" DATETIME,
    "questionedAt" DATETIME,
    "questioned" TEXT NOT NULL DEFAULT '',
    "ruling" TEXT,
    "rulingReason" TEXT NOT NULL DEFAULT '',
    "rulingById" TEXT,
    "rulingAt" DATETIME,
    CONSTRAINT "ShopCut_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_ShopCut" ("afterCc", "beforeCc", "castingId", "deepIn", "form", "seq", "shallowIn", "uAfterCc", "uBeforeCc", "visitId", "whyNot") SELECT "afterCc", "beforeCc", "castingId", "deepIn", "form", "seq", "shallowIn", "uAfterCc", "uBeforeCc", "visitId", "whyNot" FROM "ShopCut";
DROP TABLE "ShopCut";
ALTER TABLE "new_ShopCut" RENAME TO "ShopCut";
CREATE INDEX "ShopCut_castingId_form_seq_idx" ON "ShopCut"("castingId", "form", "seq");
CREATE INDEX "ShopCut_headId_idx" ON "ShopCut"("headId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- A cut made before knows its head by its visit.
UPDATE "ShopCut" SET "headId" = (SELECT "headId" FROM "Visit" WHERE "Visit"."id" = "ShopCut"."visitId");

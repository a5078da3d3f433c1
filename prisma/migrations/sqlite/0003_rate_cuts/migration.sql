-- CreateTable
CREATE TABLE "ShopCut" (
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
    CONSTRAINT "ShopCut_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "ShopCut_castingId_form_seq_idx" ON "ShopCut"("castingId", "form", "seq");

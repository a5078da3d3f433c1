-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "mode" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "currencyExponent" INTEGER NOT NULL,
    "paper" TEXT NOT NULL,
    "logoSha256" TEXT,
    "logoWidthPx" INTEGER,
    "logoHeightPx" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Shop_logoSha256_fkey" FOREIGN KEY ("logoSha256") REFERENCES "File" ("sha256") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Shop" ("address", "createdAt", "currency", "currencyExponent", "id", "locale", "mode", "name", "paper", "phone", "timeZone", "version") SELECT "address", "createdAt", "currency", "currencyExponent", "id", "locale", "mode", "name", "paper", "phone", "timeZone", "version" FROM "Shop";
DROP TABLE "Shop";
ALTER TABLE "new_Shop" RENAME TO "Shop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

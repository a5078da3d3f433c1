-- A head that was returned as is lies here until it is handed over: from then on it is handed over.
UPDATE "VisitPlace" SET "whereabouts" = 'handed over'
WHERE "whereabouts" = 'returned as is' AND "visitId" IN (SELECT "visitId" FROM "HandOver");

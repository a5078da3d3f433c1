-- Facts that are only ever added to. Applied again after every migration: SQLite drops the triggers of a table that a
-- migration rebuilds.

DROP TRIGGER IF EXISTS "AuditEntry_no_update";
CREATE TRIGGER "AuditEntry_no_update" BEFORE UPDATE ON "AuditEntry"
BEGIN SELECT RAISE(ABORT, 'AuditEntry is append-only'); END;
DROP TRIGGER IF EXISTS "AuditEntry_no_delete";
CREATE TRIGGER "AuditEntry_no_delete" BEFORE DELETE ON "AuditEntry"
BEGIN SELECT RAISE(ABORT, 'AuditEntry is append-only'); END;

DROP TRIGGER IF EXISTS "VisitEvent_no_update";
CREATE TRIGGER "VisitEvent_no_update" BEFORE UPDATE ON "VisitEvent"
BEGIN SELECT RAISE(ABORT, 'VisitEvent is append-only'); END;
DROP TRIGGER IF EXISTS "VisitEvent_no_delete";
CREATE TRIGGER "VisitEvent_no_delete" BEFORE DELETE ON "VisitEvent"
BEGIN SELECT RAISE(ABORT, 'VisitEvent is append-only'); END;

DROP TRIGGER IF EXISTS "ReadingSet_no_update";
CREATE TRIGGER "ReadingSet_no_update" BEFORE UPDATE ON "ReadingSet"
BEGIN SELECT RAISE(ABORT, 'ReadingSet is append-only'); END;
DROP TRIGGER IF EXISTS "ReadingSet_no_delete";
CREATE TRIGGER "ReadingSet_no_delete" BEFORE DELETE ON "ReadingSet"
BEGIN SELECT RAISE(ABORT, 'ReadingSet is append-only'); END;

DROP TRIGGER IF EXISTS "Reading_no_update";
CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading"
BEGIN SELECT RAISE(ABORT, 'Reading is append-only'); END;
DROP TRIGGER IF EXISTS "Reading_no_delete";
CREATE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading"
BEGIN SELECT RAISE(ABORT, 'Reading is append-only'); END;

DROP TRIGGER IF EXISTS "Waiver_no_update";
CREATE TRIGGER "Waiver_no_update" BEFORE UPDATE ON "Waiver"
BEGIN SELECT RAISE(ABORT, 'Waiver is append-only'); END;
DROP TRIGGER IF EXISTS "Waiver_no_delete";
CREATE TRIGGER "Waiver_no_delete" BEFORE DELETE ON "Waiver"
BEGIN SELECT RAISE(ABORT, 'Waiver is append-only'); END;

DROP TRIGGER IF EXISTS "PlanVersion_no_update";
CREATE TRIGGER "PlanVersion_no_update" BEFORE UPDATE ON "PlanVersion"
BEGIN SELECT RAISE(ABORT, 'PlanVersion is append-only'); END;
DROP TRIGGER IF EXISTS "PlanVersion_no_delete";
CREATE TRIGGER "PlanVersion_no_delete" BEFORE DELETE ON "PlanVersion"
BEGIN SELECT RAISE(ABORT, 'PlanVersion is append-only'); END;

DROP TRIGGER IF EXISTS "Estimate_no_update";
CREATE TRIGGER "Estimate_no_update" BEFORE UPDATE ON "Estimate"
BEGIN SELECT RAISE(ABORT, 'Estimate is append-only'); END;
DROP TRIGGER IF EXISTS "Estimate_no_delete";
CREATE TRIGGER "Estimate_no_delete" BEFORE DELETE ON "Estimate"
BEGIN SELECT RAISE(ABORT, 'Estimate is append-only'); END;

DROP TRIGGER IF EXISTS "PlanAcceptance_no_update";
CREATE TRIGGER "PlanAcceptance_no_update" BEFORE UPDATE ON "PlanAcceptance"
BEGIN SELECT RAISE(ABORT, 'PlanAcceptance is append-only'); END;
DROP TRIGGER IF EXISTS "PlanAcceptance_no_delete";
CREATE TRIGGER "PlanAcceptance_no_delete" BEFORE DELETE ON "PlanAcceptance"
BEGIN SELECT RAISE(ABORT, 'PlanAcceptance is append-only'); END;

DROP TRIGGER IF EXISTS "Release_no_update";
CREATE TRIGGER "Release_no_update" BEFORE UPDATE ON "Release"
BEGIN SELECT RAISE(ABORT, 'Release is append-only'); END;
DROP TRIGGER IF EXISTS "Release_no_delete";
CREATE TRIGGER "Release_no_delete" BEFORE DELETE ON "Release"
BEGIN SELECT RAISE(ABORT, 'Release is append-only'); END;

DROP TRIGGER IF EXISTS "OutsidePromise_no_update";
CREATE TRIGGER "OutsidePromise_no_update" BEFORE UPDATE ON "OutsidePromise"
BEGIN SELECT RAISE(ABORT, 'OutsidePromise is append-only'); END;
DROP TRIGGER IF EXISTS "OutsidePromise_no_delete";
CREATE TRIGGER "OutsidePromise_no_delete" BEFORE DELETE ON "OutsidePromise"
BEGIN SELECT RAISE(ABORT, 'OutsidePromise is append-only'); END;

DROP TRIGGER IF EXISTS "SupplyPromise_no_update";
CREATE TRIGGER "SupplyPromise_no_update" BEFORE UPDATE ON "SupplyPromise"
BEGIN SELECT RAISE(ABORT, 'SupplyPromise is append-only'); END;
DROP TRIGGER IF EXISTS "SupplyPromise_no_delete";
CREATE TRIGGER "SupplyPromise_no_delete" BEFORE DELETE ON "SupplyPromise"
BEGIN SELECT RAISE(ABORT, 'SupplyPromise is append-only'); END;

DROP TRIGGER IF EXISTS "Payment_no_update";
CREATE TRIGGER "Payment_no_update" BEFORE UPDATE ON "Payment"
BEGIN SELECT RAISE(ABORT, 'Payment is append-only'); END;
DROP TRIGGER IF EXISTS "Payment_no_delete";
CREATE TRIGGER "Payment_no_delete" BEFORE DELETE ON "Payment"
BEGIN SELECT RAISE(ABORT, 'Payment is append-only'); END;

DROP TRIGGER IF EXISTS "CallEntry_no_update";
CREATE TRIGGER "CallEntry_no_update" BEFORE UPDATE ON "CallEntry"
BEGIN SELECT RAISE(ABORT, 'CallEntry is append-only'); END;
DROP TRIGGER IF EXISTS "CallEntry_no_delete";
CREATE TRIGGER "CallEntry_no_delete" BEFORE DELETE ON "CallEntry"
BEGIN SELECT RAISE(ABORT, 'CallEntry is append-only'); END;

DROP TRIGGER IF EXISTS "Operation_no_update";
CREATE TRIGGER "Operation_no_update" BEFORE UPDATE ON "Operation"
BEGIN SELECT RAISE(ABORT, 'Operation is append-only'); END;
DROP TRIGGER IF EXISTS "Operation_no_delete";
CREATE TRIGGER "Operation_no_delete" BEFORE DELETE ON "Operation"
BEGIN SELECT RAISE(ABORT, 'Operation is append-only'); END;

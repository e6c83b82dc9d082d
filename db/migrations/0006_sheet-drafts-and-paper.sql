CREATE TABLE `sheet_draft_edits` (
	`id` text PRIMARY KEY NOT NULL,
	`draft_id` text NOT NULL,
	`position` integer NOT NULL,
	`edit` text NOT NULL,
	`by_id` text NOT NULL,
	`at` text NOT NULL,
	`undone_at` text,
	FOREIGN KEY (`draft_id`) REFERENCES `sheet_drafts`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "sheet_draft_edits_edit" CHECK("sheet_draft_edits"."edit" IS NULL OR json_valid("sheet_draft_edits"."edit")),
	CONSTRAINT "sheet_draft_edits_position" CHECK("sheet_draft_edits"."position" >= 1)
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sheet_draft_edits_once` ON `sheet_draft_edits` (`draft_id`,`position`);--> statement-breakpoint
CREATE TABLE `sheet_drafts` (
	`id` text PRIMARY KEY NOT NULL,
	`from_revision_id` text NOT NULL,
	`started_by_id` text NOT NULL,
	`started_at` text NOT NULL,
	`published_revision_id` text,
	`discarded_at` text,
	FOREIGN KEY (`from_revision_id`) REFERENCES `sheet_revisions`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`started_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`published_revision_id`) REFERENCES `sheet_revisions`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "sheet_drafts_one_end" CHECK("sheet_drafts"."published_revision_id" IS NULL OR "sheet_drafts"."discarded_at" IS NULL)
) STRICT;
--> statement-breakpoint
CREATE INDEX `sheet_drafts_by_start` ON `sheet_drafts` (`from_revision_id`);--> statement-breakpoint
CREATE TABLE `transcriptions` (
	`id` text PRIMARY KEY NOT NULL,
	`run_id` text NOT NULL,
	`entity` text NOT NULL,
	`row_id` text NOT NULL,
	`typed_by_id` text NOT NULL,
	`typed_at` text NOT NULL,
	FOREIGN KEY (`run_id`) REFERENCES `runs`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`typed_by_id`) REFERENCES `staff`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "transcriptions_entity" CHECK("transcriptions"."entity" IN ('run_answers', 'run_holds', 'run_tunings', 'firing_point_marks', 'sign_offs'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `transcriptions_by_run` ON `transcriptions` (`run_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `transcriptions_once` ON `transcriptions` (`entity`,`row_id`);--> statement-breakpoint
CREATE TRIGGER `sheet_revisions_never_change` BEFORE UPDATE ON `sheet_revisions` BEGIN SELECT RAISE(ABORT, 'a published sheet never changes: it gets a new revision'); END;
--> statement-breakpoint
CREATE TRIGGER `sheet_revisions_never_go` BEFORE DELETE ON `sheet_revisions` BEGIN SELECT RAISE(ABORT, 'a published sheet is never deleted: visits were run with it'); END;

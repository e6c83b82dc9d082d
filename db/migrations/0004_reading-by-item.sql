DROP INDEX `readings_by_run`;--> statement-breakpoint
CREATE INDEX `readings_by_item` ON `readings` (`run_id`,`item_key`,`quantity`,`sample`);
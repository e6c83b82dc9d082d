ALTER TABLE `calibrations` ADD `withdrawn_at` text;--> statement-breakpoint
ALTER TABLE `calibrations` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `instruments` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `licences` ADD `withdrawn_at` text;--> statement-breakpoint
ALTER TABLE `licences` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `trainings` ADD `withdrawn_at` text;--> statement-breakpoint
ALTER TABLE `trainings` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `placements` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `attachments` ADD `erased_at` text;--> statement-breakpoint
ALTER TABLE `permits` ADD `withdrawn_at` text;--> statement-breakpoint
ALTER TABLE `permits` ADD `end_reason` text;--> statement-breakpoint
ALTER TABLE `registrations` ADD `taken_back_why` text;
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_gas_loads` (
	`id` text PRIMARY KEY NOT NULL,
	`gas_supply_id` text NOT NULL,
	`name` text NOT NULL,
	`input_kw` real,
	`appliance_id` text,
	FOREIGN KEY (`gas_supply_id`) REFERENCES `gas_supplies`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`appliance_id`) REFERENCES `appliances`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "gas_loads_input" CHECK("__new_gas_loads"."input_kw" IS NULL OR "__new_gas_loads"."input_kw" > 0)
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_gas_loads`("id", "gas_supply_id", "name", "input_kw", "appliance_id") SELECT "id", "gas_supply_id", "name", "input_kw", "appliance_id" FROM `gas_loads`;--> statement-breakpoint
DROP TABLE `gas_loads`;--> statement-breakpoint
ALTER TABLE `__new_gas_loads` RENAME TO `gas_loads`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE INDEX `gas_loads_by_supply` ON `gas_loads` (`gas_supply_id`);
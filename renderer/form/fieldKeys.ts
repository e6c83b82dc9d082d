/** The names of a form's fields whose values are of one kind: a day field cannot be bound to a list. */
export type FieldOf<V, T> = { [K in keyof V]-?: V[K] extends T ? (T extends V[K] ? K : never) : never }[keyof V] &
  string;

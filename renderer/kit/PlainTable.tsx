/** A list as a table: the first cell of a row names it and links to it. Wide tables scroll inside their own frame. */
import { Table } from '@mantine/core';
import type { ReactNode } from 'react';

export type Column<Row> = {
  readonly label: string;
  readonly cell: (row: Row) => ReactNode;
  readonly isNumber?: boolean;
};

export function PlainTable<Row>({
  caption,
  rows,
  columns,
  keyOf,
}: {
  /** Read out first by a screen reader. */
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly columns: readonly [Column<Row>, ...Column<Row>[]];
  readonly keyOf: (row: Row) => string;
}) {
  const [first, ...others] = columns;
  return (
    <div className="lo-scroll">
      <Table className="lo-table" aria-label={caption}>
        <Table.Thead>
          <Table.Tr>
            {columns.map(({ label, isNumber }) => (
              <Table.Th key={label} scope="col" className={isNumber ? 'lo-number' : undefined}>
                {label}
              </Table.Th>
            ))}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {rows.map((row) => (
            <Table.Tr key={keyOf(row)} className="lo-row-link">
              <Table.Th scope="row">{first.cell(row)}</Table.Th>
              {others.map(({ label, cell, isNumber }) => (
                <Table.Td key={label} className={isNumber ? 'lo-number' : undefined}>
                  {cell(row)}
                </Table.Td>
              ))}
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </div>
  );
}

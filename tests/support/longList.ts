/** A list of an earlier program with so many rows, each a customer with a site, an appliance and a past service. */
export function longList(rowCount: number): string {
  const rows = Array.from({ length: rowCount }, (_, index) => {
    const day = String(1 + (index % 28)).padStart(2, '0');
    const family = FAMILIES[index % FAMILIES.length];
    return `${index + 1},${GIVEN[Math.floor(index / FAMILIES.length) % GIVEN.length]} ${family} ${index},m${index}@home.example,902 555 ${1000 + (index % 9000)},${index + 1} Capstan Row,B4T 1B2,Graven Bay,Invented maker,T 24,TK${300_000 + index},NG,2019-06-${day},2025-09-${day},S-${index}`;
  });
  return `${HEAD}\r\n${rows.join('\r\n')}\r\n`;
}

const HEAD =
  'Customer number,Name,E-mail,Phone,Street,Postcode,City,Maker,Model,Serial number,Fuel,Installed,Last service,Invoice';
const GIVEN = ['Ada', 'Bo', 'Cyl', 'Dov', 'Eda', 'Fen', 'Gil', 'Hob', 'Isa', 'Jud'];
const FAMILIES = ['Merganser', 'Sandling', 'Whimbrel', 'Dunlin', 'Petrel', 'Gadwall', 'Teal', 'Scoter', 'Smew'];

import app from '../assets/words/en/app.json';
import bench from '../assets/words/en/bench.json';
import counter from '../assets/words/en/counter.json';
import dayLine from '../assets/words/en/day-line.json';
import fits from '../assets/words/en/fits.json';
import kit from '../assets/words/en/kit.json';
import measured from '../assets/words/en/measured.json';
import people from '../assets/words/en/people.json';
import persons from '../assets/words/en/persons.json';
import reckoning from '../assets/words/en/reckoning.json';
import wall from '../assets/words/en/wall.json';

/** Texts of the screens by room. Terms of the trade (symptoms, steps, faults, stages) are in files of their own. */
export const catalogue = {
  app,
  bench,
  counter,
  'day-line': dayLine,
  fits,
  kit,
  measured,
  people,
  persons,
  reckoning,
  wall,
};

/** The key of every text that is there: `counter.job.sheet`. English sets the keys; a test holds other languages to them. */
export type WordKey = KeysOf<typeof catalogue>;

/** A group of texts: `counter.job.rows`. */
export type WordGroup = GroupsOf<typeof catalogue>;

/** The ids of a group's own texts. */
export type IdOf<Group extends WordGroup> = TextIds<GroupAt<typeof catalogue, Group>>;

// Walked down name by name: to sift all keys for each group would cost the type check seconds.
type GroupAt<Texts, Path extends string> = Path extends `${infer Name}.${infer Rest}`
  ? Name extends keyof Texts
    ? GroupAt<Texts[Name], Rest>
    : never
  : Path extends keyof Texts
    ? Texts[Path]
    : never;

type TextIds<Texts> = Texts extends unknown
  ? { [Id in keyof Texts & string]: Texts[Id] extends string ? Id : never }[keyof Texts & string]
  : never;

type KeysOf<Texts> = {
  [Key in keyof Texts & string]: Texts[Key] extends string ? Key : `${Key}.${KeysOf<Texts[Key]>}`;
}[keyof Texts & string];

type GroupsOf<Texts> = {
  [Key in keyof Texts & string]: Texts[Key] extends string ? never : Key | `${Key}.${GroupsOf<Texts[Key]>}`;
}[keyof Texts & string];

import { ComboBox, Input, Label, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import { Icon } from '../icons.tsx';
import './fields.css';
import './FindField.css';

export type ListedHit = {
  readonly id: string;
  /** What it is called. */
  readonly says: string;
  /** Owner, machine, job, part or paper, and where. */
  readonly kind: string;
};
export type FindFieldProps = {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hits: readonly ListedHit[];
  readonly onChoose: (id: string) => void;
  /** Said when something was typed and nothing was found. */
  readonly nothing: string;
};

/** The one search field: finds while typing, arrows choose, Enter opens. */
export function FindField({ label, hint, value, onChange, hits, onChoose, nothing }: FindFieldProps) {
  return (
    <ComboBox
      className="k-find"
      items={hits}
      inputValue={value}
      onInputChange={onChange}
      selectedKey={null}
      onSelectionChange={(key) => {
        if (key !== null) onChoose(String(key));
      }}
      allowsCustomValue
      allowsEmptyCollection={value.trim() !== ''}
      defaultFilter={() => true}
      menuTrigger="input"
    >
      <Label className="k-heard">{label}</Label>
      <span className="k-find-line">
        <Icon name="find" size={19} />
        <Input className="k-find-input" {...(hint === undefined ? {} : { placeholder: hint })} data-find="" />
      </span>
      <Popover className="k-find-list" offset={2} placement="bottom start">
        <ListBox<ListedHit> renderEmptyState={() => <p className="k-find-none">{nothing}</p>}>
          {(hit) => (
            <ListBoxItem id={hit.id} textValue={hit.says} className="k-find-hit">
              <Text slot="label">{hit.says}</Text>
              <Text slot="description" className="k-muted k-small">
                {hit.kind}
              </Text>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

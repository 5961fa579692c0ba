'use client';

import { useEffect, useEffectEvent, useState } from 'react';
import type { Standing } from '#lib/overview/said-rows';
import { PAGE_KEY } from '../../../../_ui/shortcuts/keys';
import type { EditPage, Row } from './view';

/** What is shown of the statements, which is chosen, which stands open. */
export interface DeskState {
  readonly filter: Standing | null;
  readonly shown: readonly Row[];
  readonly chosen: string | null;
  readonly open: string | null;
  /** The one that was last chosen elsewhere than in the list of statements, so that the list has to show it. */
  readonly asked: string | null;
  /** Counts how often one was chosen, and how often elsewhere. */
  readonly tick: number;
  readonly askedTick: number;
  readonly byKey: number;
  readonly setFilter: (filter: Standing | null) => void;
  readonly choose: (id: string) => void;
  /** As `choose`, and the focus goes to it. */
  readonly reach: (id: string) => void;
  readonly toggle: (id: string) => void;
  readonly step: (by: 1 | -1) => void;
}

export function useDesk({ rows, at }: EditPage): DeskState {
  const [filter, setFilter] = useState<Standing | null>(null);
  const [chosen, setChosen] = useState<string | null>(at);
  const [open, setOpen] = useState<string | null>(at);
  const [tick, setTick] = useState(at === null ? 0 : 1);
  const [asked, setAsked] = useState<string | null>(at);
  const [askedTick, setAskedTick] = useState(tick);
  const [byKey, setByKey] = useState(0);
  const shown = filter === null ? rows : rows.filter(({ standing }) => standing === filter);

  const choose = (id: string) => {
    if (!shown.some((row) => row.id === id)) setFilter(null);
    setChosen(id);
    setTick((count) => count + 1);
    setAsked(id);
    setAskedTick((count) => count + 1);
  };
  const reach = (id: string) => {
    choose(id);
    setByKey((count) => count + 1);
  };
  const chooseByKey = (row: Row | undefined) => {
    if (row) reach(row.id);
  };
  const step = (by: 1 | -1) => {
    const here = shown.findIndex(({ id }) => id === chosen);
    chooseByKey(here < 0 ? shown[0] : shown[here + by]);
  };
  const next = (standing: Standing) => {
    const here = rows.findIndex(({ id }) => id === chosen);
    const after = rows.slice(here + 1).find((row) => row.standing === standing);
    chooseByKey(after ?? rows.find((row) => row.standing === standing));
  };
  const press = useEffectEvent((key: string) => {
    if (key === 'next') step(1);
    else if (key === 'before') step(-1);
    else if (key === 'off') next('off');
    else if (key === 'unknown') next('unknown');
  });
  useEffect(() => {
    const listen = (event: Event) => {
      if (event instanceof CustomEvent && typeof event.detail === 'string') press(event.detail);
    };
    document.addEventListener(PAGE_KEY, listen);
    return () => document.removeEventListener(PAGE_KEY, listen);
  }, []);

  return {
    filter,
    shown,
    chosen,
    open,
    asked,
    tick,
    askedTick,
    byKey,
    setFilter,
    choose,
    reach,
    // Its line was pressed and is in view: the list stays where it is.
    toggle: (id) => {
      if (id !== chosen) setTick((count) => count + 1);
      setChosen(id);
      setOpen((now) => (now === id ? null : id));
    },
    step,
  };
}

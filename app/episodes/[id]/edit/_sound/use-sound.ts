'use client';

import { useEffect, useRef, useState } from 'react';
import { forgetSound, keepSound, readSound, type KeptSound } from './sound-store';

/** The sound of an edit, to be heard at a place. */
export interface Sound {
  /** Null while none was chosen. */
  readonly name: string | null;
  /** What is to be known of it, as that it can't be played. */
  readonly told: string;
  readonly choose: (file: File) => void;
  readonly forget: () => void;
  readonly hear: (fromS: number, toS: number) => void;
}

const UNPLAYABLE = 'This browser can’t play that file: choose the sound as WAV, MP3 or AAC.';
const NOT_KEPT = 'It is there until this page is closed: the browser would not keep it.';

export function useSound(episodeId: string): Sound {
  const [kept, setKept] = useState<KeptSound | null>(null);
  const [told, setTold] = useState('');
  const player = useRef<HTMLAudioElement | null>(null);
  const until = useRef(0);

  useEffect(() => {
    let here = true;
    void readSound(episodeId).then((sound) => {
      if (here && sound) setKept(sound);
    });
    return () => {
      here = false;
    };
  }, [episodeId]);

  useEffect(() => {
    if (kept === null) return;
    const url = URL.createObjectURL(kept.blob);
    const audio = new Audio(url);
    audio.preload = 'metadata';
    const stop = () => {
      if (audio.currentTime >= until.current) audio.pause();
    };
    const broken = () => setTold(UNPLAYABLE);
    audio.addEventListener('timeupdate', stop);
    audio.addEventListener('error', broken);
    player.current = audio;
    return () => {
      audio.pause();
      audio.removeEventListener('timeupdate', stop);
      audio.removeEventListener('error', broken);
      player.current = null;
      URL.revokeObjectURL(url);
    };
  }, [kept]);

  return {
    name: kept?.name ?? null,
    told,
    choose: (file) => {
      const sound = { episodeId, name: file.name, blob: file };
      setKept(sound);
      setTold('');
      void keepSound(sound).then((lasts) => {
        if (!lasts) setTold(NOT_KEPT);
      });
    },
    forget: () => {
      setKept(null);
      setTold('');
      void forgetSound(episodeId);
    },
    hear: (fromS, toS) => {
      const audio = player.current;
      if (!audio) return;
      if (audio.duration <= fromS) {
        setTold('The sound ends before this place: is it of this edit?');
        return;
      }
      until.current = toS;
      audio.currentTime = fromS;
      audio.play().catch(() => setTold(UNPLAYABLE));
    },
  };
}

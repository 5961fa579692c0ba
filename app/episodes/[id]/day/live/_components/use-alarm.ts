import { useCallback, useEffect, useRef, useState } from 'react';
import { useAwake } from '../../../../../_ui/use-awake';

/** Between two rings while a timer is out, in milliseconds. */
const RING_EVERY_MS = 2_500;
const TONE_HZ = 880;
const TONE_S = 0.35;
const SHAKE_MS = [300, 120, 300];

export interface Alarm {
  /** Whether the person has asked for sound since the page was loaded; browsers allow none before. */
  readonly on: boolean;
  readonly turnOn: () => void;
  readonly turnOff: () => void;
}

/** Rings and shakes while `ringing`, once the person has asked for it, and keeps the screen awake where it can. */
export function useAlarm(ringing: boolean): Alarm {
  const [on, setOn] = useState(false);
  const audio = useRef<AudioContext | null>(null);
  const turnOn = useCallback(() => {
    if (typeof AudioContext !== 'undefined') {
      audio.current ??= new AudioContext();
      void audio.current.resume();
    }
    shake();
    setOn(true);
  }, []);
  const turnOff = useCallback(() => setOn(false), []);

  useEffect(() => {
    if (!on || !ringing) return;
    const ring = () => {
      if (audio.current) beep(audio.current);
      shake();
    };
    ring();
    const timer = setInterval(ring, RING_EVERY_MS);
    return () => clearInterval(timer);
  }, [on, ringing]);

  useAwake(on);

  return { on, turnOn, turnOff };
}

function beep(audio: AudioContext): void {
  const tone = audio.createOscillator();
  const loud = audio.createGain();
  tone.frequency.value = TONE_HZ;
  loud.gain.value = 0.4;
  tone.connect(loud).connect(audio.destination);
  tone.start();
  tone.stop(audio.currentTime + TONE_S);
}

function shake(): void {
  if ('vibrate' in navigator) navigator.vibrate(SHAKE_MS);
}

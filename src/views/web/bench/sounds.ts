/** Soft sounds of the bench: three pitches, a tick every ten bees, a rising pair at the target, a low one for what did not count. */

export type Sound = "clear" | "mites" | "unreadable" | "ten" | "target" | "refused";

/** Pitches in hertz, one after the other. Blind readings use one pitch for every bee, so that nothing is told. */
const pitches: Readonly<Record<Sound, readonly number[]>> = {
  clear: [392],
  mites: [523],
  unreadable: [294],
  ten: [880],
  target: [523, 784],
  refused: [147],
};

const seconds = 0.09;
let context: AudioContext | null = null;

/** Plays a sound; without audio hardware nothing happens, since every sound has a twin that is seen. */
export function play(sound: Sound): void {
  try {
    context ??= new AudioContext();
    const audio = context;
    pitches[sound].forEach((pitch, index) => {
      const start = audio.currentTime + index * seconds;
      const tone = audio.createOscillator();
      const loudness = audio.createGain();
      tone.frequency.value = pitch;
      loudness.gain.setValueAtTime(0.0001, start);
      loudness.gain.exponentialRampToValueAtTime(0.12, start + 0.012);
      loudness.gain.exponentialRampToValueAtTime(0.0001, start + seconds);
      tone.connect(loudness).connect(audio.destination);
      tone.start(start);
      tone.stop(start + seconds + 0.02);
    });
  } catch {
    context = null;
  }
}

/** How an alarm makes itself felt beside its words; both are off until a person turns them on. */
export interface AlarmSignals {
  readonly sound: boolean;
  readonly vibration: boolean;
}

/** Three short tones and a shake, as far as the device has them and they are turned on. */
export function signal({ sound, vibration }: AlarmSignals): void {
  if (vibration && 'vibrate' in navigator) navigator.vibrate([400, 150, 400, 150, 400]);
  if (!sound || typeof AudioContext === 'undefined') return;
  const audio = new AudioContext();
  for (const start of [0, 0.4, 0.8]) {
    const tone = audio.createOscillator();
    tone.frequency.value = 880;
    tone.connect(audio.destination);
    tone.start(audio.currentTime + start);
    tone.stop(audio.currentTime + start + 0.25);
  }
  setTimeout(() => void audio.close(), 2000);
}

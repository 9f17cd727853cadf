// What practising needs beside the program: sounds, and its part kept for use without a network.
//
// Sounds are asked for by an event `coldcase:sound` on window, whose detail names one of SOUNDS,
// "wake" from within a tap, or "stop".

let context = null;
let playing = null;

function wake() {
  if (!window.AudioContext) return;
  context = context || new AudioContext();
  if (context.state === "suspended") context.resume().catch(() => {});
}

function stop() {
  if (playing) playing.disconnect();
  playing = null;
}

// A tone rich in overtones at twice the mains: what a standing or a turning motor hums.
function hum(out, at, seconds, loud) {
  const tone = context.createOscillator();
  const soft = context.createBiquadFilter();
  const level = context.createGain();
  tone.type = "sawtooth";
  tone.frequency.value = 100;
  soft.type = "lowpass";
  soft.frequency.value = 320;
  level.gain.setValueAtTime(0, at);
  level.gain.linearRampToValueAtTime(loud, at + 0.05);
  level.gain.setValueAtTime(loud, at + seconds - 0.1);
  level.gain.linearRampToValueAtTime(0, at + seconds);
  tone.connect(soft).connect(level).connect(out);
  tone.start(at);
  tone.stop(at + seconds);
}

// Noise within a band: air, a hiss, or, short, a click.
function noise(out, at, seconds, type, frequency, loud) {
  const length = Math.ceil(context.sampleRate * seconds);
  const buffer = context.createBuffer(1, length, context.sampleRate);
  const samples = buffer.getChannelData(0);
  for (let place = 0; place < length; place += 1) samples[place] = Math.random() * 2 - 1;
  const source = context.createBufferSource();
  const band = context.createBiquadFilter();
  const level = context.createGain();
  source.buffer = buffer;
  band.type = type;
  band.frequency.value = frequency;
  level.gain.setValueAtTime(loud, at);
  level.gain.linearRampToValueAtTime(0, at + seconds);
  source.connect(band).connect(level).connect(out);
  source.start(at);
}

const SOUNDS = {
  hum: (out, at) => hum(out, at, 2.5, 0.3),
  run: (out, at) => {
    noise(out, at, 0.04, "bandpass", 900, 0.4);
    hum(out, at, 3, 0.12);
  },
  "hum-click": (out, at) => {
    hum(out, at, 2.5, 0.3);
    noise(out, at + 2.5, 0.03, "highpass", 1500, 0.6);
  },
  click: (out, at) => noise(out, at, 0.03, "highpass", 1500, 0.6),
  fan: (out, at) => noise(out, at, 2.5, "bandpass", 500, 0.3),
  hiss: (out, at) => noise(out, at, 2.5, "highpass", 3000, 0.15),
};

window.addEventListener("coldcase:sound", ({ detail }) => {
  if (detail === "wake") return wake();
  stop();
  if (!context || !SOUNDS[detail]) return;
  playing = context.createGain();
  playing.connect(context.destination);
  SOUNDS[detail](playing, context.currentTime + 0.02);
});

// A browser that has no worker here practises with a network only.
if (navigator.serviceWorker) {
  navigator.serviceWorker.ready.then(({ active }) => active.postMessage("keep practice"));
}

/** A list of words written as one text. */
function words(text: string): readonly string[] {
  return text.split(/\s+/);
}

/** What a column measures, by the words of its header. Lower case, accents removed; English, German, French, Spanish. */
export type QuantityWord =
  | "voltage"
  | "current"
  | "rotation"
  | "temperature"
  | "throttle"
  | "altitude"
  | "speed"
  | "charge"
  | "time"
  | "date"
  | "index";

export const QUANTITY_WORDS: Readonly<Record<QuantityWord, readonly string[]>> = {
  voltage: words(`voltage volt volts v u spannung tension voltaje voltios vbat vbatt vpack ubat ubatt uakku
    upack battv packv vin uin emk vmot umot volt. mv vesc vcell`),
  current: words(`current curr cur amps amp ampere amperes amperage a i strom stromstarke courant intensite
    corriente intensidad ibat ibatt ipack iakku imot iesc iin ma`),
  rotation: words(`rpm erpm rev revs revolutions revolution rotation rotations drehzahl umdrehungen upm tach
    tacho tachometer regime tours revoluciones vueltas giros umin rotspeed rpms krpm`),
  temperature:
    words(`temp temperature temps temperatur temperatura tmp heat thermo thermocouple probe tesc tmot
    tfet tbat tpack tamb degc degf celsius fahrenheit`),
  throttle: words("throttle thr throt gas gaz acelerador drossel throttl gasstellung gashebel thro stick"),
  altitude: words("altitude alt height hohe hoehe altitud hauteur altura elevation baroalt agl msl"),
  speed: words(`speed velocity geschwindigkeit vitesse velocidad airspeed groundspeed ias tas gs gspd aspd
    spd fahrt sog`),
  charge: words(`mah ah used consumed consumption capacity capa cap charge verbrauch verbraucht kapazitat
    kapazitaet ladung entladen consomme capacite consumo consumido capacidad discharged drawn
    coulomb chg mahused`),
  time: words(`time t timestamp timestamps clock zeit uhrzeit zeitstempel laufzeit temps tiempo heure hora
    elapsed seconds secs sec s ms us millis micros milliseconds microseconds uptime datetime ts
    tick ticks runtime hms utc gmt epoch unixtime unix min minutes duree duration stamp iso
    clocktime timer tod sekunden`),
  date: words("date datum fecha day tag jour dia"),
  index: words(`sample samples index idx row record rec no nr number num counter count frame line seq
    sequence id entry muestra zeile packet`),
};

/** Where a column is measured. */
export type SourceWord =
  | "pack"
  | "controller"
  | "motor"
  | "propeller"
  | "cell"
  | "air"
  | "receiver"
  | "phase"
  | "satellite";

export const SOURCE_WORDS: Readonly<Record<SourceWord, readonly string[]>> = {
  pack: words(`pack battery batt bat akku accu batterie bateria lipo main total input in supply dc bus
    flugakku antriebsakku vbat vbatt vpack ubat ubatt uakku upack battv packv ibat ibatt ipack
    iakku vin uin iin tbat tpack drive power stack traction pwr`),
  controller:
    words(`esc controller regler ctrl ctl fet fets mosfet inverter variateur regulador variador board
    pcb stage tesc tfet vesc iesc controleur heatsink drehzahlregler steller regulator
    speedcontroller motorcontroller`),
  motor: words("motor mot moteur engine winding windings wicklung stator tmot imot vmot umot mtr"),
  propeller: words(`prop propeller shaft luftschraube helice spinner welle arbre eje airscrew propshaft rotor
    latte`),
  cell: words("cell cells zelle zellen cel element celda celula cellule c vcell zellenspannung zellspannung"),
  air: words(`ambient air outside oat aussen umgebung exterieur ambiente env environment tamb weather amb
    outdoor aire luft aussentemperatur lufttemperatur`),
  receiver:
    words(`rx receiver empfanger empfaenger bec ubec sbec servo servos radio tx transmitter sender link
    recepteur receptor rcv rcvr rec avionics logger sensor backup telemetry rxbt a1 rxv vrx mcu
    cpu ignition`),
  phase: words("phase ph rms iq id phasen strang ac"),
  satellite: words("gps gnss sat sats satellites"),
};

/** Words that make a column something else than a measured value of a channel, with the reason. */
export const EXCLUDING_WORDS: readonly (readonly [readonly string[], string])[] = [
  [
    words(`target setpoint demand demanded desired cmd command commanded ref reference soll requested
    consigne sollwert goal`),
    "a set point, not a measured value",
  ],
  [
    words(`max maximum min minimum avg average mean peak mittel highest lowest maxi mini moyen limit
    threshold alarm warning warn filtered rated nominal`),
    "a summary or a threshold, not the momentary value",
  ],
  [
    words("rssi lqi lq snr signal link quality vfr frames fades holds lost packets antenna feldstarke"),
    "radio signal quality",
  ],
  [
    words(`lat latitude lon lng long longitude sats satellites hdop vdop pdop fix course heading cog
    bearing track kurs breite lange`),
    "satellite position data, no channel needs it",
  ],
  [words("wind"), "weather, not the aircraft"],
  [
    words(`angular gyro orientation quaternion acceleration accel acc accelerometer roll pitch yaw
    attitude vibration mag magnetometer rate angle gforce beschleunigung`),
    "motion or attitude, no channel needs it",
  ],
  [words("vario climb sink steigen vertical vspd vspeed roc"), "a rate of climb, no channel needs it"],
  [
    words("remaining left rest fuel soc percentage restkapazitat restant restante"),
    "a remainder that counts down, not charge used",
  ],
  [
    words("aileron elevator rudder flap flaps gear channel switch trim servo"),
    "a control position, no channel needs it",
  ],
  [
    words("resistance ri impedance widerstand ohm"),
    "a resistance computed elsewhere; it is computed here from volts and amps",
  ],
  [
    words("watt watts leistung puissance potencia energy energie wh energia"),
    "power and energy are computed here from volts and amps",
  ],
  [words("torque thrust schub drehmoment force weight empuje"), "a bench quantity, no channel needs it"],
  [words("humidity pressure feuchte druck baro barometer hum"), "weather or pressure, no channel needs it"],
  [
    words(`timing pwm duty status state mode flags flag error errors event armed code version model
    ripple`),
    "a state of the electronics, no channel needs it",
  ],
];

export const ELECTRICAL_WORDS: readonly string[] = words(
  "erpm electrical elec elektrisch electric electrique electrico e field drehfeld commutation",
);
/** Words of a speed through the air and over the ground. */
export const AIRSPEED_WORDS: readonly string[] = words(
  "airspeed ias tas aspd air pitot true indicated fahrt cas",
);
export const GROUND_WORDS: readonly string[] = words(
  "ground groundspeed gps gnss gs gspd sog sol grund uber",
);
/** Sensors of the board that are cooler than the power stage. */
export const BOARD_PART_WORDS: readonly string[] = words(
  "mcu cpu bec cap capacitor board pcb processor chip logic",
);
export const POWER_STAGE_WORDS: readonly string[] = words("fet fets mosfet stage tfet heatsink");

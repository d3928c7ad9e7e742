/**
 * German terms of the measures of the dictionary, by id: first the one that is published, then other headings that lists have.
 *
 * Those marked EN are the terms of DIN EN 13402-1:2001 (Größenbezeichnung von Bekleidung, Teil 1), as public pages about
 * that standard list them; the standard itself was not at hand. All others are common words of German cutting and dressmaking,
 * from memory; where ISO 8559-1 has a term, the word is meant to say the same. Words that mean different measures to
 * different cutters, such as Schulterbreite (one shoulder or
 * both) and Seitenlänge (waist to armhole, or to floor), are left out.
 */
export const germanTerms: Readonly<Record<string, readonly [string, ...string[]]>> = {
  // EN: Körpergröße (Körperhöhe); ISO 8559-1 “stature”.
  height: ["Körpergröße", "Größe", "Körperhöhe", "Gesamthöhe", "Gesamtgröße", "Höhe"],
  shoulderGirth: ["Schulterumfang"],
  shoulderWidth: ["Rückenbreite von Schulter zu Schulter", "Schulterbreite gesamt"],
  shoulderLength: ["Schulterlänge"],
  // EN: Halsumfang; ISO 8559-1 “neck girth”.
  neckGirth: ["Halsumfang", "Hals", "Halsweite"],
  neckBaseGirth: ["Halsansatzumfang"],
  acrossFront: ["Vordere Brustbreite"],
  acrossBack: ["Rückenbreite"],
  upperBustGirth: ["Oberbrustumfang", "Oberbrustweite"],
  // EN: Brustumfang; ISO 8559-1 “bust girth”.
  bustGirth: ["Brustumfang", "Oberweite", "Brust", "Brustweite"],
  // EN: Unterbrustumfang; ISO 8559-1 “under-bust girth”.
  underBustGirth: ["Unterbrustumfang", "Unterbrust", "Unterbrustweite"],
  // EN: Taillenumfang; ISO 8559-1 “waist girth”.
  waistGirth: ["Taillenumfang", "Taille", "Taillenweite"],
  highHipGirth: ["Oberer Hüftumfang"],
  // EN: Hüftumfang; ISO 8559-1 “hip girth”.
  hipGirth: ["Hüftumfang", "Hüfte", "Hüftweite", "Gesäßumfang", "Gesäßweite"],
  backWaistLength: ["Rückenlänge", "Rückenlänge bis Taille"],
  frontWaistLength: ["Vordere Taillenlänge", "Vorderlänge", "Vordere Länge"],
  centreFrontLength: ["Vordere Mittellänge"],
  bustPointWidth: ["Brustpunktabstand", "Brustabstand"],
  bustPointDepth: ["Brusttiefe"],
  sideWaistLength: ["Seitliche Taillenlänge"],
  waistToHip: ["Hüfttiefe"],
  torsoLength: ["Rumpflänge"],
  torsoGirth: ["Rumpfumfang"],
  bodyRise: ["Sitzhöhe", "Leibhöhe"],
  crotchLength: ["Schrittlänge von Taille zu Taille"],
  // EN: Armlänge; ISO 8559-1 “arm length”.
  armLength: ["Armlänge"],
  upperArmLength: ["Oberarmlänge"],
  underarmLength: ["Innere Armlänge"],
  armscyeGirth: ["Armlochumfang"],
  upperArmGirth: ["Oberarmumfang", "Oberarm", "Oberarmweite"],
  elbowGirth: ["Ellbogenumfang", "Ellbogen"],
  forearmGirth: ["Unterarmumfang", "Unterarm"],
  wristGirth: ["Handgelenkumfang", "Handgelenk", "Handgelenksumfang", "Handgelenkweite"],
  // EN: Handumfang; ISO 8559-1 “hand girth”.
  handGirth: ["Handumfang"],
  handLength: ["Handlänge"],
  outsideLeg: ["Äußere Beinlänge", "Seitliche Beinlänge"],
  // EN: innere Beinlänge; ISO 8559-1 “inside leg length”.
  insideLeg: ["Innere Beinlänge", "Innenbeinlänge", "Innenbein", "Beininnenlänge", "Schrittlänge"],
  waistToKnee: ["Länge von Taille bis Knie"],
  kneeHeight: ["Kniehöhe"],
  thighGirth: ["Oberschenkelumfang", "Oberschenkel", "Oberschenkelweite"],
  midThighGirth: ["Umfang in der Mitte des Oberschenkels"],
  kneeGirth: ["Knieumfang", "Knie", "Knieweite"],
  calfGirth: ["Wadenumfang", "Wade", "Wadenweite"],
  ankleGirth: ["Fesselumfang", "Fessel", "Fesselweite", "Knöchelumfang"],
  heelGirth: ["Fersenumfang"],
  footGirth: ["Ballenumfang", "Fußumfang"],
  instepGirth: ["Spannumfang"],
  // EN: Fußlänge; ISO 8559-1 “foot length”.
  footLength: ["Fußlänge"],
  footWidth: ["Fußbreite"],
  heelHeight: ["Absatzhöhe"],
  // EN: Kopfumfang; ISO 8559-1 “head girth”.
  headGirth: ["Kopfumfang", "Kopf", "Kopfweite"],
  headHeight: ["Kopfhöhe"],
  faceWidth: ["Gesichtsbreite"],
};

/**
 * Said wherever words such as 'nut free' are judged. US: 21 CFR 101.91 (gluten-free: under 20 ppm, and no grain with
 * gluten that was not refined of it), FALCPA 2004 (Pub. L. 108-282) with the FASTER Act 2021 (Pub. L. 117-11). EU:
 * Regulation (EU) No 1169/2011, Annex II, and Implementing Regulation (EU) No 828/2014 (gluten-free: at most 20 mg/kg).
 */
export const FREE_FROM_CAUTION =
  'Somebody with an allergy may rely on these words, and a breakdown cannot show that a dish is free of anything: it knows no traces and no cross-contact. Such words have legal limits (US: 21 CFR 101.91 for gluten, FALCPA for allergens; EU: Regulations 1169/2011, Annex II, and 828/2014 for gluten). Your local code and licensed advice decide.';

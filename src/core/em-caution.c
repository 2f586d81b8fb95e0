/* em-caution: what can hurt someone, from process, composition, coating and preheat.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-caution.h"

#include "em-cost-internal.h"

#include <string.h>

#define BIT(caution) (1u << (caution))
#define BENCH EM_CAUTION_ON_BENCH
#define BOTH  (EM_CAUTION_ON_BENCH | EM_CAUTION_ON_QUOTE)

const EmCautionRow em_cautions[EM_N_CAUTION] =
{
  [EM_CAUTION_LASER_CLASS_4] = { "laser-class-4", EM_N ("Class 4 beam"),
    EM_N ("The beam is of class 4: even scattered it blinds, burns skin and starts fires. Weld only inside the enclosure or with eyewear made for "
          "this wavelength, under your laser safety officer’s rules and local law."),
    "IEC 60825-1, ANSI Z136.1", BENCH },
  [EM_CAUTION_ARC_RADIATION] = { "arc-radiation", EM_N ("Arc radiation"),
    EM_N ("The arc burns eyes and skin, also of those nearby. Filter, screens and covered skin as your welding safety rules and local codes ask."),
    "ANSI Z49.1, 29 CFR 1910.252", BENCH },
  [EM_CAUTION_CHROMIUM_VI] = { "chromium-vi", EM_N ("Chromium(VI) fume"),
    EM_N ("Fume from metal with chromium, or from chrome plate, can hold chromium(VI), which causes cancer. Extract at the weld; exposure limits "
          "and monitoring are set by local codes."),
    EM_N ("29 CFR 1910.1026: at most 5 µg/m³ over 8 hours"), BENCH },
  [EM_CAUTION_BERYLLIUM] = { "beryllium", EM_N ("Beryllium"),
    EM_N ("This metal holds beryllium: its fume and dust cause lasting lung disease even in traces. Weld and grind it only where controls, monitoring and "
          "respirators meet local codes, run by people qualified for it."),
    EM_N ("29 CFR 1910.1024: at most 0.2 µg/m³ over 8 hours"), BOTH },
  [EM_CAUTION_NICKEL] = { "nickel", EM_N ("Nickel fume"),
    EM_N ("Nickel in fume and dust can cause cancer and skin allergy. Extract at the weld and keep to the exposure limits of your local codes."),
    "29 CFR 1910.1000", BENCH },
  [EM_CAUTION_COBALT] = { "cobalt", EM_N ("Cobalt fume"),
    EM_N ("Cobalt in fume and dust harms lungs and skin and may cause cancer. Extract at the weld and keep to the exposure limits of your local codes."),
    "29 CFR 1910.1000", BENCH },
  [EM_CAUTION_MANGANESE] = { "manganese", EM_N ("Manganese fume"),
    EM_N ("Manganese in fume harms the nervous system. Extract at the weld and keep to the exposure limits of your local codes."),
    "29 CFR 1910.1000", BENCH },
  [EM_CAUTION_COPPER] = { "copper", EM_N ("Copper fume"),
    EM_N ("Copper fume causes metal fume fever. Extract at the weld and keep to the exposure limits of your local codes."),
    "29 CFR 1910.1000", BENCH },
  [EM_CAUTION_LEAD_SULPHUR] = { "lead-sulfur", EM_N ("Lead or sulfur fume"),
    EM_N ("Free-machining metal holds lead or sulfur: lead fume is poisonous, sulfur dioxide irritates the lungs. Extract at the weld and keep to the "
          "limits of your local codes."),
    "29 CFR 1910.1025, 29 CFR 1910.1000", BENCH },
  [EM_CAUTION_ARGON] = { "argon", EM_N ("Argon collects"),
    EM_N ("Argon is heavier than air and collects in pits, cavities and closed rooms, where a few breaths can kill without warning. Air the place, "
          "watch oxygen, and enter confined spaces only by the permit local codes ask for."),
    EM_N ("29 CFR 1910.146: oxygen below 19.5 percent is too little; 29 CFR 1910.252"), BENCH },
  [EM_CAUTION_PREHEAT_BURNS] = { "preheat-burns", EM_N ("Hot tool"),
    EM_N ("The tool is preheated: it burns skin and can light what touches it, long after welding. Mark it hot, lift it with rated gear, and follow your "
          "shop’s and local hot work rules."),
    "ANSI Z49.1", BENCH },
  [EM_CAUTION_COATING_CHROME] = { "coating-chrome", EM_N ("Chrome plate off first"),
    EM_N ("Chrome plate must come off before welding: it cracks the weld, and its fume can hold chromium(VI). Strip it by a licensed method that meets local codes."),
    "29 CFR 1910.1026", BOTH },
  [EM_CAUTION_COATING_NITRIDE] = { "coating-nitride", EM_N ("Nitrided case off first"),
    EM_N ("A nitrided case must be taken off before welding: left on, it makes pores and cracks. Removing it is to follow local codes on dust and chemicals."),
    EM_N ("common practice"), BOTH },
  [EM_CAUTION_COATING_UNKNOWN] = { "coating-unknown", EM_N ("Unknown coating"),
    EM_N ("The coating named is not known to this program. Find out what it is and remove it before welding: its fume may be poisonous and the weld may not hold. "
          "Local codes decide how."),
    EM_N ("common practice"), BOTH },
  [EM_CAUTION_FIRE] = { "fire", EM_N ("Fire"),
    EM_N ("Welding is hot work: clear or cover what burns, keep an extinguisher at hand and a fire watch afterwards as local codes ask."),
    "29 CFR 1910.252", BENCH },
  [EM_CAUTION_WELD_DUST] = { "weld-dust", EM_N ("Dust of the welds"),
    EM_N ("Machining, grinding and polishing these welds makes dust with chromium, nickel, cobalt or beryllium, which harms lungs and skin. Extract it, and "
          "follow the suppliers’ safety data sheets and your local codes."),
    "29 CFR 1910.1000, 29 CFR 1910.1024", BOTH },
  [EM_CAUTION_LOCAL_CODES] = { "local-codes", EM_N ("Local codes decide"),
    EM_N ("No list of cautions is complete, and none is legal advice. Local codes, the suppliers’ safety data sheets and licensed or qualified practice decide."),
    "", BOTH },
};

/* From this share on, by the high end of the range, of base or wire: vapour comes from both. Chromium as in the method (about
 * 1 %); beryllium's is the standard's own (29 CFR 1910.1024(a)(3)); cobalt's and lead's are the usual disclosure limit for
 * carcinogens and reproductive toxins; nickel's, manganese's, copper's and sulfur's are common practice, above residuals. */
static const struct { EmElement element; double from_pct; EmCaution caution; } element_cautions[] =
{
  { EM_EL_CR, 1.0, EM_CAUTION_CHROMIUM_VI },
  { EM_EL_BE, 0.1, EM_CAUTION_BERYLLIUM },
  { EM_EL_NI, 1.0, EM_CAUTION_NICKEL },
  { EM_EL_CO, 0.1, EM_CAUTION_COBALT },
  { EM_EL_MN, 1.0, EM_CAUTION_MANGANESE },
  { EM_EL_CU, 1.0, EM_CAUTION_COPPER },
  { EM_EL_PB, 0.1, EM_CAUTION_LEAD_SULPHUR },
  { EM_EL_S, 0.05, EM_CAUTION_LEAD_SULPHUR },
};

/* The most of an element the ranges allow, percent. The balance is whatever the others leave at their lowest. */
static double
most_pct (const EmComposition *composition, EmElement element)
{
  double rest_pct = 100.0;

  if (composition->balance != element)
    return composition->high_pct[element];
  for (int i = 0; i < EM_N_ELEMENT; i++)
    if (i != (int) element)
      rest_pct -= composition->low_pct[i];
  return rest_pct;
}

static uint32_t
cautions_of_composition (const EmComposition *composition)
{
  uint32_t set = 0;

  for (size_t i = 0; i < sizeof element_cautions / sizeof element_cautions[0]; i++)
    if (most_pct (composition, element_cautions[i].element) >= element_cautions[i].from_pct)
      set |= BIT (element_cautions[i].caution);
  /* What is poisonous as fume is so as dust, for whoever machines the weld. */
  if (set & (BIT (EM_CAUTION_CHROMIUM_VI) | BIT (EM_CAUTION_NICKEL) | BIT (EM_CAUTION_COBALT) | BIT (EM_CAUTION_BERYLLIUM)))
    set |= BIT (EM_CAUTION_WELD_DUST);
  return set;
}

/*
 * em_caution_pair:
 * @base, @filler: either may be NULL when it is not known
 *
 * Cautions of welding one metal with one wire by one process.
 */
uint32_t
em_caution_pair (const EmBase *base, const EmFiller *filler, EmProcess process)
{
  uint32_t set = BIT (EM_CAUTION_ARGON) | BIT (EM_CAUTION_FIRE) | BIT (EM_CAUTION_LOCAL_CODES);

  set |= BIT (process == EM_PROCESS_LASER ? EM_CAUTION_LASER_CLASS_4 : EM_CAUTION_ARC_RADIATION);
  if (base != NULL)
    set |= cautions_of_composition (&base->composition);
  if (filler != NULL)
    set |= cautions_of_composition (&filler->composition);
  return set;
}

/* ---- coatings ---- */

/* ASCII only: no locale in the engine. */
static char
lower (char c)
{
  return c >= 'A' && c <= 'Z' ? (char) (c - 'A' + 'a') : c;
}

/* Whether text holds word, ASCII letters in either case. */
static bool
has_word (const char *text, const char *word)
{
  for (; *text != '\0'; text++)
    {
      size_t n = 0;

      while (word[n] != '\0' && lower (text[n]) == word[n])
        n++;
      if (word[n] == '\0')
        return true;
    }
  return false;
}

/* Chrome plate and nitride by the stems the trade's languages share ("hard chrome", "hartverchromt", "cromado", "nitrided",
 * "Gasnitriert"). A chromium nitride film is neither, and any other words are a coating nobody here knows. Blank: none told. */
static uint32_t
cautions_of_coating (const char *coating)
{
  if (coating == NULL || coating[strspn (coating, " \t\r\n")] == '\0')
    return 0;

  bool has_chrome = has_word (coating, "chrom") || has_word (coating, "crom");
  bool has_nitride = has_word (coating, "nitr");
  bool is_film = has_word (coating, "pvd") || has_word (coating, "cvd") || (has_chrome && has_nitride);
  uint32_t set = is_film ? BIT (EM_CAUTION_COATING_UNKNOWN) : 0;

  if (has_chrome)
    set |= BIT (EM_CAUTION_COATING_CHROME) | BIT (EM_CAUTION_CHROMIUM_VI);
  if (has_nitride)
    set |= BIT (EM_CAUTION_COATING_NITRIDE);
  return set != 0 ? set : BIT (EM_CAUTION_COATING_UNKNOWN);
}

/* ---- the quote ---- */

/* A feature without good figures: what the office named; every process of the shop that could be used where it named none. */
static uint32_t
cautions_of_words (const EmQuote *quote, const EmFeature *feature, const EmRates *rates, const EmCatalogue *catalogue)
{
  const char *filler_id = feature->text[EM_FEATURE_FILLER] != NULL ? feature->text[EM_FEATURE_FILLER] : quote->text[EM_QUOTE_FILLER];
  const char *machine_id, *process_id;
  int32_t base = em_catalogue_find_base (catalogue, quote->text[EM_QUOTE_BASE]);
  int32_t filler = em_catalogue_find_filler (catalogue, filler_id);
  uint32_t set = 0;

  em_cost_find_named (quote, feature, &machine_id, &process_id);
  int32_t named = em_rates_find_machine (rates, machine_id), process = em_process_find (process_id);
  for (int32_t i = 0; i < rates->n_machines; i++)
    if (named >= 0 ? i == named : !rates->machine[i].is_retired && (process < 0 || (int32_t) rates->machine[i].process == process))
      set |= em_caution_pair (base >= 0 ? &catalogue->base[base] : NULL, filler >= 0 ? &catalogue->filler[filler] : NULL,
                              rates->machine[i].process);
  return set;
}

/* Whether the figures of a feature can be gone by, indices checked. */
static bool
is_costed (const EmFeatureCost *cost, const EmRates *rates, const EmCatalogue *catalogue)
{
  return cost->status == EM_OK && cost->base >= 0 && cost->base < catalogue->n_bases && cost->filler >= 0
         && cost->filler < catalogue->n_fillers && cost->machine >= 0 && cost->machine < rates->n_machines;
}

/*
 * em_caution_quote:
 * @cost: of this quote, or NULL; features it has no good figures for are gone by with the office's choices
 *
 * Reads the members of *cost only.
 */
uint32_t
em_caution_quote (const EmQuote *quote, const EmCost *cost, const EmRates *rates, const EmCatalogue *catalogue)
{
  uint32_t set = BIT (EM_CAUTION_LOCAL_CODES) | cautions_of_coating (quote->text[EM_QUOTE_COATING]);

  for (int32_t i = 0; i < quote->n_features; i++)
    {
      const EmFeatureCost *costed = cost != NULL && i < cost->n_features ? &cost->feature[i] : NULL;

      if (costed != NULL && is_costed (costed, rates, catalogue))
        set |= em_caution_pair (&catalogue->base[costed->base], &catalogue->filler[costed->filler], rates->machine[costed->machine].process);
      else
        set |= cautions_of_words (quote, &quote->feature[i], rates, catalogue);
    }
  if ((cost != NULL && cost->is_preheated) || (quote->has_preheat && quote->preheat == EM_YES))
    set |= BIT (EM_CAUTION_PREHEAT_BURNS);
  return set;
}

/* em-rates: the shop's rate book: money, minutes, factors and machines.
 *
 * Every scalar is a row of em_rate_fields[], which file reads and writes by, the
 * window edits by and the checks run by; a new one is a member and a row.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-catalogue.h"
#include "em-feature.h"
#include "em-money.h"
#include "em-quantity.h"

#include <stddef.h>

enum { EM_MACHINE_MAX = 12, EM_TAX_MAX = 6, EM_SETTING_MAX = 12 };

/* Starting values of a machine for one wire size; those not listed are interpolated
 * between neighbours, never beyond the ends by more than the machine's wire limits. */
typedef struct
{
  double wire_mm;
  double spot_mm;       /* laser; NaN: spot_ratio·d */
  double pulse_ms;      /* laser */
  double frequency_hz;  /* laser */
  double current_a, voltage_v, speed_mm_per_s;  /* GTAW */
} EmSetting;

typedef struct
{
  char     *id;             /* "laser-300" */
  char     *name;           /* the shop's words */
  EmProcess process;
  double    wire_low_mm, wire_high_mm;      /* what it melts, inclusive */
  double    power_w;                        /* rated average (laser) or arc U·I limit (GTAW) */
  double    pulse_energy_j, peak_w;         /* laser ratings; NaN for GTAW */
  double    current_high_a;                 /* GTAW rating; NaN for laser */
  double    overlap_ratio;                  /* laser, of the spot diameter, 0 … < 1 */
  double    spot_ratio;                     /* D 1.2: spot = ratio·d */
  double    coupling_ratio;                 /* ηm: coupling (or arc) × melting efficiency */
  double    dilution_ratio;                 /* D of the first layer */
  double    cone_half_deg;                  /* α of the focusing cone, or the torch's clearance cone */
  double    head_width_mm;                  /* working envelope at the mouth; NaN: cone only */
  double    gas_l_per_min, gas_pre_post_s;  /* per start and stop, per layer */
  int64_t   machine_minor_per_h;            /* charged on arc-on */
  int64_t   consumable_minor_per_h;         /* optics, flash lamps, tungsten: on arc-on */
  double    operating_ratio[EM_N_ACCESS];   /* OF: arc-on / weld handling */
  double    usable_ratio;                   /* wire not lost as ball-ups and missed pulses, D 0.90 */
  double    efficiency_ratio;               /* η deposition, D 0.95 */
  int32_t   n_settings;
  EmSetting setting[EM_SETTING_MAX];        /* ascending wire_mm */
  bool      is_retired;
} EmMachine;

typedef struct
{
  char   *name;      /* as printed */
  int64_t rate_ppm;
  bool    on_taxes;  /* charged on the taxes above it too */
} EmTax;

typedef enum
{
  EM_SHOP_NAME, EM_SHOP_ADDRESS, EM_SHOP_PHONE, EM_SHOP_EMAIL, EM_SHOP_WEB, EM_SHOP_REGISTRATION, EM_SHOP_BANK,
  EM_SHOP_LOGO /* file name beside the rate book */, EM_SHOP_TERMS, EM_SHOP_PAPER, EM_SHOP_NUMBER_PATTERN,
  EM_RATES_EDITION /* name and date of this book */, EM_RATES_EXTRA, EM_N_SHOP_TEXT
} EmShopText;

extern const char *const em_shop_text_ids[EM_N_SHOP_TEXT];

typedef struct
{
  char      *text[EM_N_SHOP_TEXT];
  EmCurrency currency;
  EmUnits    units;
  bool       is_demo;                   /* invented defaults, not yet gone over by the shop */

  /* money */
  int64_t bench_minor_per_h, finish_minor_per_h, office_minor_per_h;
  int64_t gas_minor_per_m3;
  int64_t minimum_minor;                /* smallest order, before tax */
  int64_t rounding_minor;               /* step the order's net is rounded to; 1: none */
  int64_t overhead_ppm;                 /* on labour */
  int64_t contingency_ppm;              /* on cost */
  int64_t margin_ppm;                   /* share of price */
  int64_t rush_ppm;                     /* added when the quote says rush with no figure */
  int64_t finish_minor_per_cm2, finish_minor_per_cm; /* bought-out or wear cost of finishing, on top of time */

  /* deposit */
  double layer_ratio;                   /* κ */
  double stock_mm;                      /* machining allowance */
  int32_t safety_layers;
  double stick_mm, stub_mm;
  bool   buys_whole_sticks;

  /* minutes */
  double receive_min;                   /* receive and clean, per tool */
  double paperwork_min;                 /* office, once per order */
  double true_setting_min;              /* per setting per tool */
  double mask_min, mask_min_per_cm2;    /* per instance, and by area */
  double wire_change_min;
  double program_min;                   /* one-off, first tool only: settings and a trial bead */
  double preheat_attend_min;            /* attended share, per tool preheated */
  double inspect_min, inspect_min_per_cm; /* per instance, and by welded edge or extent */
  double pack_min;                      /* per tool */
  double strip_coating_min_per_cm2;
  double finish_min_per_cm2, finish_min_per_cm3;
  int64_t learning_ppm;                 /* 1,000,000: off */
  int32_t validity_days;

  int32_t   n_machines;
  EmMachine machine[EM_MACHINE_MAX];
  int32_t   n_taxes;
  EmTax     tax[EM_TAX_MAX];
} EmRates;

typedef enum
{
  EM_RATE_MINOR, EM_RATE_PPM,      /* int64_t */
  EM_RATE_REAL,                    /* double */
  EM_RATE_WHOLE,                   /* int32_t */
  EM_RATE_BOOL                     /* bool */
} EmRateType;

typedef struct
{
  const char *id;        /* "bench" … stable, XML attribute and fault field; unique over all three tables */
  const char *name;      /* EM_N label */
  const char *group;     /* "money", "deposit", "minutes"; "machine", "setting" */
  const char *unit;      /* "/h", "min", "mm", "min/cm²", "%", "" */
  EmRateType  type;
  size_t      offset;
  double      low, high; /* both allowed; in the stored unit */
  uint32_t    processes; /* machines and settings: bit (1 << EmProcess) where it must be given; 0: may always be NaN */
} EmRateField;

extern const EmRateField em_rate_fields[];
extern const int         em_n_rate_fields;
extern const EmRateField em_machine_fields[];   /* offsets into EmMachine */
extern const int         em_n_machine_fields;
extern const EmRateField em_setting_fields[];   /* offsets into EmSetting */
extern const int         em_n_setting_fields;

/* A row's value in the struct that holds it, as a double, and back; for money and counts exact below 2^53. */
double em_rate_get (const EmRateField *field, const void *holder);
void   em_rate_set (const EmRateField *field, void *holder, double value);

void     em_rates_init (EmRates *out_rates);       /* all zero or NaN, step 1; not a usable book */
void     em_rates_clear (EmRates *rates);
EmStatus em_rates_copy (const EmRates *rates, EmRates *out_copy);
bool     em_rates_equal (const EmRates *a, const EmRates *b);
EmStatus em_rates_set_text (EmRates *rates, EmShopText which, const char *text);
EmStatus em_rates_add_machine_take (EmRates *rates, EmMachine *machine);
EmStatus em_rates_add_tax_take (EmRates *rates, EmTax *tax);
int32_t  em_rates_find_machine (const EmRates *rates, const char *id);  /* −1 */
void     em_machine_init (EmMachine *out_machine);  /* zero or NaN, no strings */
void     em_machine_clear (EmMachine *machine);
EmStatus em_machine_copy (const EmMachine *machine, EmMachine *out_copy);
void     em_tax_clear (EmTax *tax);
EmStatus em_machine_check (const EmMachine *machine, EmFault *out_fault);
/* Limits of every row, machine and tax. fault.row EM_ROW_RATES; field a row's id, or "currency", "machine" (no machine,
 * or an id missing or used twice), "machine_settings" (none, or not in ascending wire), "tax". */
EmStatus em_rates_check (const EmRates *rates, EmFault *out_fault);

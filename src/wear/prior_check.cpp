#include "wear/prior_check.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "clinic/say.hpp"
#include "wear/other_endings.hpp"

namespace sparewell::wear {
namespace {

/// False for NaN too.
bool within(double value, double least, double most) {
  return value >= least && value <= most;
}

bool is_spread(double value) {
  return value > 0 && value <= 10;
}

std::string name_of(const LifePrior& row) {
  if (!row.material) return say("Life prior of {}", shown_word(row.kind));
  return say("Life prior of {} in {}", shown_word(row.kind), shown_word(*row.material));
}

std::string name_of(const FactorPrior& row) {
  return say("Factor prior of {} and {}", shown_word(row.kind), factor_name(row.factor));
}

std::string name_of(const PersonPrior& row) {
  return say("Person prior of {}", shown_word(row.kind));
}

std::string name_of(const ItemPrior& row) {
  return say("Item prior of {}", shown_word(row.kind));
}

std::string name_of(const EndingPrior& row) {
  return say("Ending prior of {} and {}", shown_word(row.kind), shown_word(row.reason));
}

tl::unexpected<Refusal> refuse_value(const std::string& row, std::string_view column, double value,
                                     const std::string& allowed) {
  return refuse(say("{}: {} is {}, but must be {}.", row, column, value, allowed));
}

Expected<void> check_lives_of(const PriorTable& priors, Kind kind) {
  int general = 0;
  std::array<int, 7> of_material{};
  static_assert(static_cast<std::size_t>(Material::other) + 1 == of_material.size());
  for (const LifePrior& row : priors.lives) {
    if (row.kind != kind) continue;
    int& seen = row.material ? of_material[static_cast<std::size_t>(*row.material)] : general;
    if (++seen > 1) return refuse(say("{} has two rows; keep one.", name_of(row)));
  }
  if (general == 1) return {};
  return refuse(
      say("{} has no row without material; add one, which stands for materials without a row.",
          name_of(LifePrior{kind, std::nullopt, 0, 0, 0, 0, ""})));
}

Expected<void> check_factors_of(const PriorTable& priors, Kind kind) {
  std::array<int, factor_count> rows{};
  for (const FactorPrior& row : priors.factors) {
    if (row.kind == kind) ++rows[static_cast<std::size_t>(row.factor)];
  }
  for (std::size_t i = 0; i < factor_count; ++i) {
    if (rows[i] == 1) continue;
    const FactorPrior row{kind, static_cast<Factor>(i), 1, 1, ""};
    return refuse(say("{} has {} rows, but must have one.", name_of(row), rows[i]));
  }
  return {};
}

/// One row of the kind.
template <class Row>
Expected<void> check_single(const std::vector<Row>& all, Kind kind) {
  const auto rows = std::ranges::count(all, kind, &Row::kind);
  if (rows == 1) return {};
  return refuse(say("{} has {} rows, but must have one.", name_of(Row{kind, 1, 1, ""}), rows));
}

Expected<void> check_endings_of(const PriorTable& priors, Kind kind) {
  for (const EndReason reason : other_reasons) {
    const auto rows = std::ranges::count_if(priors.endings, [&](const EndingPrior& row) {
      return row.kind == kind && row.reason == reason;
    });
    if (rows == 1) continue;
    return refuse(say("{} has {} rows, but must have one.",
                      name_of(EndingPrior{kind, reason, 1, 1, ""}), rows));
  }
  return {};
}

template <class Row>
Expected<void> check_source(const Row& row) {
  if (!row.source.empty()) return {};
  return refuse(say(
      "{}: the source is empty; write where the numbers come from, for example common practice.",
      name_of(row)));
}

}  // namespace

Expected<void> check_life_prior(const LifePrior& row) {
  if (!within(row.median_days, 0.1, 36525)) {
    return refuse_value(name_of(row), "median_days", row.median_days, say("from 0.1 to 36525"));
  }
  if (!is_spread(row.median_spread)) {
    return refuse_value(name_of(row), "median_spread", row.median_spread,
                        say("above 0, at most 10"));
  }
  if (!within(row.shape, 0.1, 20)) {
    return refuse_value(name_of(row), "shape", row.shape, say("from 0.1 to 20"));
  }
  if (!is_spread(row.shape_spread)) {
    return refuse_value(name_of(row), "shape_spread", row.shape_spread, say("above 0, at most 10"));
  }
  return {};
}

Expected<void> check_factor_prior(const FactorPrior& row) {
  if (!within(row.life_ratio, 0.01, 100)) {
    return refuse_value(name_of(row), "life_ratio", row.life_ratio, say("from 0.01 to 100"));
  }
  if (!is_spread(row.spread)) {
    return refuse_value(name_of(row), "spread", row.spread, say("above 0, at most 10"));
  }
  return {};
}

Expected<void> check_person_prior(const PersonPrior& row) {
  if (!within(row.variance, 1e-6, 10)) {
    return refuse_value(name_of(row), "variance", row.variance, say("from 0.000001 to 10"));
  }
  if (!is_spread(row.spread)) {
    return refuse_value(name_of(row), "spread", row.spread, say("above 0, at most 10"));
  }
  return {};
}

Expected<void> check_item_prior(const ItemPrior& row) {
  if (!within(row.spread, 1e-3, 2)) {
    return refuse_value(name_of(row), "spread", row.spread, say("from 0.001 to 2"));
  }
  if (!is_spread(row.spread_of_spread)) {
    return refuse_value(name_of(row), "spread_of_spread", row.spread_of_spread,
                        say("above 0, at most 10"));
  }
  return {};
}

Expected<void> check_ending_prior(const EndingPrior& row) {
  if (is_wear(row.reason)) {
    return refuse(say("{}: the reason is wear, which lives.csv tells of.", name_of(row)));
  }
  if (!within(row.per_year, 1e-6, 100)) {
    return refuse_value(name_of(row), "per_year", row.per_year, say("from 0.000001 to 100"));
  }
  if (!within(row.weight_years, 0.01, 1e6)) {
    return refuse_value(name_of(row), "weight_years", row.weight_years,
                        say("from 0.01 to 1000000"));
  }
  return {};
}

Expected<void> check_priors(const PriorTable& priors) {
  for (const LifePrior& row : priors.lives) {
    if (auto sane = check_life_prior(row); !sane) return sane;
    if (auto sourced = check_source(row); !sourced) return sourced;
  }
  for (const FactorPrior& row : priors.factors) {
    if (auto sane = check_factor_prior(row); !sane) return sane;
    if (auto sourced = check_source(row); !sourced) return sourced;
  }
  for (const PersonPrior& row : priors.persons) {
    if (auto sane = check_person_prior(row); !sane) return sane;
    if (auto sourced = check_source(row); !sourced) return sourced;
  }
  for (const ItemPrior& row : priors.items) {
    if (auto sane = check_item_prior(row); !sane) return sane;
    if (auto sourced = check_source(row); !sourced) return sourced;
  }
  for (const EndingPrior& row : priors.endings) {
    if (auto sane = check_ending_prior(row); !sane) return sane;
    if (auto sourced = check_source(row); !sourced) return sourced;
  }
  for (std::size_t i = 0; i < words<Kind>().size(); ++i) {
    const auto kind = static_cast<Kind>(i);
    if (auto complete = check_lives_of(priors, kind); !complete) return complete;
    if (auto complete = check_factors_of(priors, kind); !complete) return complete;
    if (auto complete = check_single(priors.persons, kind); !complete) return complete;
    if (auto complete = check_single(priors.items, kind); !complete) return complete;
    if (auto complete = check_endings_of(priors, kind); !complete) return complete;
  }
  return {};
}

}  // namespace sparewell::wear

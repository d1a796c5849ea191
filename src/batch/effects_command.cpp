#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/effect_words.hpp"

namespace sparewell::batch {
namespace {

Json json_of(Kind kind, const wear::FactorEffect& effect) {
  return {{"factor", wear::factor_name(effect.factor)},
          {"amount", effect.amount},
          {"life_ratio", effect.ratio},
          {"low", effect.low},
          {"high", effect.high},
          {"prior_life_ratio", effect.prior_ratio},
          {"words", desk::effect_words(kind, effect)}};
}

Json json_of(const wear::KindLife& life, const std::vector<wear::FactorEffect>& effects) {
  Json medians = Json::object();
  for (const auto& [material, scale] : life.scale) {
    medians[std::string{word(material)}] = wear::median_days(life, material);
  }
  Json rows = Json::array();
  for (const auto& effect : effects) rows.push_back(json_of(life.kind, effect));
  return {{"kind", word(life.kind)},           {"shape", life.shape},
          {"median_days", std::move(medians)}, {"units", life.units},
          {"wear_endings", life.wear_endings}, {"effects", std::move(rows)},
          {"converged", life.converged},       {"note", life.note}};
}

void print_words(const wear::KindLife& life, const std::vector<wear::FactorEffect>& effects) {
  std::cout << word(life.kind) << ": " << desk::effect_grounds(life) << '\n';
  for (const auto& effect : effects) {
    std::cout << "  " << desk::effect_words(life.kind, effect) << '\n';
  }
}

int run(const Context& context) {
  const Date today = context.today();
  const auto& priors = desk::built_in_priors();
  const auto fitted = wear::fit_clinic(context.clinic_on(today), priors, today);
  Json kinds = Json::array();
  for (const auto& [kind, life] : fitted.kinds) {
    const auto effects = wear::factor_effects(life, priors);
    if (context.json) {
      kinds.push_back(json_of(life, effects));
    } else {
      print_words(life, effects);
    }
  }
  if (context.json) {
    print({{"today", batch::json_of(today)}, {"kinds", std::move(kinds)}});
  } else {
    std::cout << desk::effect_caution() << '\n';
  }
  return done;
}

}  // namespace

void add_effects(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "effects",
      "How activity, kneeling, hours of wear, sweating and sport change the life of parts");
  command->callback([&context] { context.run = [&context] { return run(context); }; });
}

}  // namespace sparewell::batch

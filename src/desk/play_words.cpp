#include "desk/play_words.hpp"

#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::play::Played;
using supply::play::Policy;
using supply::play::Saving;
using supply::play::Setting;
using supply::play::Simulation;

std::string min_max_words(const Setting& setting) {
  switch (setting.rounding) {
    case supply::play::Rounding::down:
      return say("Min-max, {:g} x down", setting.step);
    case supply::play::Rounding::up:
      return say("Min-max, {:g} x up", setting.step);
    case supply::play::Rounding::nearest:
      break;
  }
  return say("Min-max, {:g} x", setting.step);
}

/// "41 % less", "5 % more".
std::string less_or_more(double share) {
  const double rounded = std::round(100 * share);
  if (rounded == 0) return said("0 % less");
  return rounded > 0 ? say("{:.0f} % less", rounded) : say("{:.0f} % more", -rounded);
}

std::string left_open(const Saving& saving, int worlds) {
  if (!saving.low || !saving.high) return said(" (how sure that is cannot be told)");
  const auto low = less_or_more(*saving.low);
  const auto high = less_or_more(*saving.high);
  return worlds > 1 ? say(" ({} to {} with 90 % confidence, the futures drawn anew)", low, high)
                    : say(" ({} to {} with 90 % confidence, the items drawn anew)", low, high);
}

}  // namespace

std::string setting_words(const Setting& setting) {
  switch (setting.policy) {
    case Policy::sparewell:
      return say("Sparewell, {:g} %", std::round(1000 * setting.step) / 10);
    case Policy::by_cost:
      return say("By cost, {:g} %", std::round(1000 * setting.step) / 10);
    case Policy::min_max:
      return min_max_words(setting);
    case Policy::when_empty:
      return said("Order when empty");
  }
  return "";
}

std::string whole_amount(double minor, const Currency& currency) {
  const double scale = std::pow(10, currency.decimals());
  return fmt::format("{} {}", number_words(std::llround(minor / scale)), currency.code);
}

std::string share_words(double share) {
  return say("{:.1f} %", 100 * share);
}

std::string played_title(const Played& played, int months) {
  const auto span = count_words(months, "month", "months");
  return played.worlds == 1
             ? say("The last {}, {}", span, played.currency.code)
             : say("{} futures of {}, {}", played.worlds, span, played.currency.code);
}

std::string saving_words(const Played& played, double service) {
  const auto& ours = played.ours(service);
  if (ours.pieces == 0)
    return said("No stocked part was asked for, so there is nothing to compare.");
  const auto did = say(
      "At the service target of {:g} % Sparewell has {} of the pieces on hand when asked for, with "
      "{} in stock on average.",
      std::round(1000 * service) / 10, share_words(ours.fill_rate()),
      whole_amount(ours.stock, played.currency));
  const auto& saving = played.saving;
  if (!saving) {
    return say("{} Min-max reaches this share at none of the levels that were tried.", did);
  }
  return say("{} Min-max at its best needs {} for the same share: Sparewell needs {}{}.", did,
             whole_amount(saving->peer, played.currency), less_or_more(saving->share),
             left_open(*saving, played.worlds));
}

std::string by_cost_words(const Played& played) {
  const auto& saving = played.saving_by_cost;
  if (!saving) return "";
  return say(
      "With targets by cost, higher for cheap parts and lower for dear ones, {} would do for the "
      "same share of pieces: {} than min-max{}. Dear parts would then be waited for more often; "
      "Sparewell orders so once the clinic's details name the cost of a missing piece.",
      whole_amount(saving->ours, played.currency), less_or_more(saving->share),
      left_open(*saving, played.worlds));
}

std::vector<std::string> play_notes(const Simulation& simulation) {
  std::vector<std::string> notes{
      say("All meet the same patients, order days and lead times, and begin with a steady "
          "stock {} days before anything is counted.",
          simulation.plan.warm_up_days),
      said(
          "Sparewell orders up to what covers the forecast demand with the service target. Min-max "
          "keeps a year's use times a factor, the best of all factors being taken; order when "
          "empty "
          "buys a pack when none is left."),
      said("A rush order is needed when nothing is on hand and nothing free arrives within 2 "
           "days.")};
  if (!simulation.past.empty()) {
    notes.emplace_back(said(
        "The past is played with what was known on each order day; what was handed out was asked "
        "for, by new patients too."));
  }
  if (!simulation.past_refused.empty()) notes.push_back(simulation.past_refused);
  if (!simulation.futures.empty()) {
    notes.emplace_back(
        said("Futures are drawn by the law of wear that was learned: changes to other items, new "
             "patients, and doubt about the law itself are left out; this favours Sparewell."));
  }
  if (simulation.patient_ordered > 0) {
    notes.push_back(say_n("{} item ordered for one patient is left out.",
                          "{} items ordered for one patient are left out.",
                          static_cast<unsigned long>(simulation.patient_ordered),
                          number_words(simulation.patient_ordered)));
  }
  if (simulation.without_cost > 0) {
    notes.push_back(say_n("{} stocked item without a cost is left out.",
                          "{} stocked items without a cost are left out.",
                          static_cast<unsigned long>(simulation.without_cost),
                          number_words(simulation.without_cost)));
  }
  return notes;
}

}  // namespace sparewell::desk

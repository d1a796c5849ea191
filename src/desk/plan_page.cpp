#include "desk/plan_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/play_rows.hpp"
#include "desk/play_words.hpp"

namespace sparewell::desk {
namespace {

using supply::play::Played;
using supply::play::Policy;
using supply::play::Setting;

}  // namespace

PlanPage::PlanPage() : runs_{run_columns()} {}

void PlanPage::show_play(PolicyPlayPtr play) {
  play_ = std::move(play);
  const auto count = choices().size();
  chosen_ = std::min(chosen_, count > 0 ? count - 1 : 0);
  fill();
}

void PlanPage::choose(std::size_t choice) {
  chosen_ = choice;
  fill();
}

void PlanPage::fill() {
  const Played* played = shown();
  runs_.fill(played ? run_rows(*played, (*play_)->plan.service) : std::vector<TableRow>{});
  curves_ = played ? play_curves(*played, (*play_)->plan.service) : std::vector<PlayCurve>{};
}

const Played* PlanPage::shown() const {
  if (!played()) return nullptr;
  const auto& simulation = **play_;
  if (chosen_ < simulation.past.size()) return &simulation.past[chosen_];
  const auto future = chosen_ - simulation.past.size();
  return future < simulation.futures.size() ? &simulation.futures[future] : nullptr;
}

std::vector<std::string> PlanPage::choices() const {
  std::vector<std::string> made;
  if (!played()) return made;
  for (const auto* all : {&(*play_)->past, &(*play_)->futures}) {
    for (const Played& each : *all) made.push_back(played_title(each, (*play_)->plan.months));
  }
  return made;
}

std::string PlanPage::headline() const {
  if (!play_) return said("The order policy has not been played on this clinic yet.");
  if (!*play_) return play_->error().sentence;
  const Played* played = shown();
  return played ? saving_words(*played, (*play_)->plan.service) : (*play_)->past_refused;
}

std::string PlanPage::by_cost() const {
  const Played* played = shown();
  return played ? by_cost_words(*played) : "";
}

std::string PlanPage::grounds() const {
  if (!play_) {
    return said(
        "Play the policy (Ctrl+Y) goes through the last 12 months day by day, and through "
        "futures drawn from what was learned of wear, and orders as Sparewell would have "
        "ordered, by min-max levels, and when nothing is left. It shows what each keeps in "
        "stock and whom it keeps waiting. It takes seconds, or many minutes where "
        "there are thousands of patients; it changes nothing, and can be stopped.");
  }
  return played() ? fmt::format("{}", fmt::join(play_notes(**play_), " ")) : "";
}

std::string PlanPage::present_id() const {
  const Played* played = shown();
  if (!played) return "";
  const Setting present{Policy::sparewell, (*play_)->plan.service, supply::play::Rounding::nearest};
  const auto found = std::ranges::find(played->runs, present, &supply::play::Totals::setting);
  return fmt::format("{}", found - played->runs.begin());
}

std::string PlanPage::money_title() const {
  const Played* played = shown();
  return played ? say("Mean money in stock, {}", played->currency.code) : "";
}

}  // namespace sparewell::desk

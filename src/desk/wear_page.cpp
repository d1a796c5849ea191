#include "desk/wear_page.hpp"

#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/surprise_words.hpp"
#include "desk/trust_words.hpp"
#include "desk/wear_rows.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

WearPage::WearPage()
    : scores_{score_columns()},
      effects_{effect_columns()},
      flagged_{flag_columns()},
      early_{early_columns()} {}

void WearPage::show(DayPtr day) {
  day_ = std::move(day);
  effects_.fill(effect_rows(day_->assessment().fitted, built_in_priors()));
  flagged_.fill(flag_rows(*day_));
  early_.fill(early_rows(*day_));
}

void WearPage::show_test(ForecastTestPtr test) {
  test_ = std::move(test);
  scores_.fill(tested() ? score_rows(**test_) : std::vector<TableRow>{});
  drawn_ = tested() ? score_entries(**test_) : std::vector<ScoreEntry>{};
}

void WearPage::choose(std::optional<Kind> kind) {
  chosen_ = kind;
  effects_.require(kind_mark(kind));
  early_.require(kind_mark(kind));
}

std::string WearPage::headline() const {
  if (!test_) return said("The forecasts have not been tested on this clinic's history yet.");
  if (!*test_) return test_->error().sentence;
  return span_words(**test_, chosen_);
}

std::string WearPage::errors() const {
  return tested() ? error_words(**test_, chosen_) : "";
}

std::string WearPage::grounds() const {
  if (tested()) return test_words(**test_);
  return said(
      "Test the forecasts (Ctrl+T) goes back to days in the past, forecasts from what was known "
      "then how long each part in use would last, and compares that with what happened. It takes "
      "some seconds, changes nothing, and can be stopped. Until then nobody knows how good the "
      "forecasts are for this clinic.");
}

std::string WearPage::flag_words(const std::string& id) const {
  if (!day_) return "";
  const auto& found = day_->surprises();
  for (const auto& [name, tested] : {std::pair{"lot", &found.lots}, {"item", &found.items}}) {
    for (std::size_t i = 0; i < tested->size(); ++i) {
      if (fmt::format("{} {}", name, i) == id) return early_endings_words((*tested)[i]);
    }
  }
  return "";
}

std::string WearPage::early_summary() const {
  return day_ ? surprises_summary(day_->surprises()) : "";
}

std::string WearPage::early_count() const {
  if (!day_) return "";
  const auto& found = day_->surprises();
  const auto by_chance = found.units_by_chance < 1
                             ? std::string{said("less than one")}
                             : say("about {}", number_words(std::lround(found.units_by_chance)));
  auto text = say_n(
      "{} part wore out so early that fewer than 1 in 100 do; by chance alone it would be {}",
      "{} parts wore out so early that fewer than 1 in 100 do; by chance alone it would be {}",
      found.units.size(), number_words(std::ssize(found.units)), by_chance);
  if (early_.size() != early_.total())
    text += say(" ({} shown)", number_words(static_cast<long long>(early_.size())));
  return text + ".";
}

std::string WearPage::early_empty_words() const {
  if (early_.total() == 0) return said("No part wore out that early.");
  return said("No such part answers to what you asked for.");
}

std::optional<std::size_t> WearPage::unit_of(const std::string& early_id) const {
  if (!early_.position_of(early_id)) return std::nullopt;
  return std::stoul(early_id);
}

std::string kind_id(std::optional<Kind> kind) {
  return kind ? std::string{word(*kind)} : std::string{"all"};
}

std::optional<Kind> kind_of_id(const std::string& id) {
  return parse_word<Kind>(id);
}

std::string kind_title(std::optional<Kind> kind) {
  return kind ? capitalised(kind_plural(*kind)) : std::string{said("All kinds")};
}

std::vector<std::optional<Kind>> kind_choices() {
  std::vector<std::optional<Kind>> choices{std::nullopt};
  for (std::size_t i = 0; i < words<Kind>().size(); ++i) choices.emplace_back(static_cast<Kind>(i));
  return choices;
}

unsigned kind_mark(std::optional<Kind> kind) {
  return kind ? 1U << static_cast<unsigned>(*kind) : 0U;
}

std::string effects_introduction() {
  return said(
      "How the life of parts changes with use, from this clinic's records and, where these are "
      "few, from general expectation. Each line compares with a patient who is alike in all else: "
      "one activity level lower, no kneeling, fewer hours of wear, normal sweating, no impact "
      "sport.");
}

}  // namespace sparewell::desk

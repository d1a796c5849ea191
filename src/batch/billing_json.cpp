#include "batch/billing_json.hpp"

#include <array>

#include <fmt/format.h>

#include "desk/billing/answering.hpp"
#include "desk/billing/both_sides.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

Json text_or_null(const std::string& text) {
  return text.empty() ? Json() : Json(text);
}

}  // namespace

Json exact(const std::optional<Money>& money) {
  if (!money) return nullptr;
  return {{"minor", money->minor}, {"currency", money->currency.code}};
}

std::string_view state_key(billing::WorkState state) {
  static constexpr std::array<std::string_view, 3> keys{"open", "waiting", "settled"};
  return keys[static_cast<std::size_t>(state)];
}

Json json_of(const BillingAnswer& answer) {
  return {{"answer", word(answer.answer)},
          {"reason", answer.reason},
          {"by", answer.answered_by},
          {"on", json_of(answer.answered_on)},
          {"ask_again_on", json_of(answer.ask_again_on)}};
}

Json json_of(const billing::WorkItem& item, const Clinic& clinic) {
  const auto& found = item.finding;
  const auto sides = desk::both_sides(clinic, found);
  Json answers = Json::array();
  for (const auto& answer : item.history) answers.push_back(json_of(answer));
  return {{"key", found.key},
          {"kind", billing::finding_word(found.kind)},
          {"book", desk::book_key(billing::book_of(found.kind))},
          {"state", state_key(item.state)},
          {"changed_since_answer", item.has_changed},
          {"patient_ref", text_or_null(found.patient.text)},
          {"side", found.side ? Json(word(*found.side)) : Json()},
          {"payer", text_or_null(found.payer)},
          {"code", text_or_null(found.code)},
          {"item_code", text_or_null(found.item.text)},
          {"supplier", text_or_null(found.supplier.text)},
          {"reference", text_or_null(found.reference)},
          {"other", text_or_null(found.other)},
          {"since", json_of(found.since)},
          {"other_day", json_of(found.other_day)},
          {"age_days", item.age_days},
          {"quantity", found.quantity},
          {"ours", found.ours},
          {"theirs", found.theirs},
          {"money", exact(found.money)},
          {"our_amount", exact(found.our_amount)},
          {"their_amount", exact(found.their_amount)},
          {"cause", desk::cause_key(found.cause)},
          {"remedy", desk::remedy_key(found.remedy)},
          {"words", desk::finding_sentence(found)},
          {"cause_words", desk::cause_words(found)},
          {"remedy_words", desk::remedy_words(found)},
          {"our_side", sides.ours.lines},
          {"other_side", sides.theirs.lines},
          {"answers", std::move(answers)}};
}

std::string lines_of(const billing::WorkItem& item, const Clinic& clinic) {
  const auto& found = item.finding;
  const auto sides = desk::both_sides(clinic, found);
  auto text = fmt::format("{}: {}", desk::finding_title(found.kind), desk::finding_sentence(found));
  text += fmt::format("\n  {}, {} old. {}",
                      found.money ? desk::amount_words(*found.money) : std::string{"Sum not known"},
                      desk::span_words(item.age_days), desk::cause_words(found));
  for (const auto* side : {&sides.ours, &sides.theirs}) {
    if (side->lines.empty()) text += fmt::format("\n  {}: {}", side->title, side->empty);
    for (const auto& line : side->lines) text += fmt::format("\n  {}: {}", side->title, line);
  }
  text += fmt::format("\n  {}", desk::remedy_words(found));
  for (const auto& answer : item.history) {
    text += fmt::format("\n  {}", desk::answer_words(answer));
  }
  return fmt::format("{}\n  Key: {}", text, found.key);
}

}  // namespace sparewell::batch

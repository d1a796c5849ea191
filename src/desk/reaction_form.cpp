#include "desk/reaction_form.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/reaction_record.hpp"
#include "desk/suspect_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr auto no_side = to_say("not of one side");

std::string usual_sign_words() {
  std::vector<std::string> signs;
  for (const auto sign : usual_signs) signs.emplace_back(said(std::string{sign}.c_str()));
  return fmt::format("{}", fmt::join(signs, ", "));
}

Expected<Reaction> read_reaction(const PatientRef& patient, const std::vector<std::string>& given) {
  Reaction reaction;
  reaction.patient = patient;
  reaction.side = parse_word<Side>(given[0]);
  const auto began = parse_iso_date(given[1]);
  if (!began) return refuse(say("Began on: write the day as 2026-11-25."));
  reaction.began_on = *began;
  if (!given[2].empty()) {
    reaction.ended_on = parse_iso_date(given[2]);
    if (!reaction.ended_on) {
      return refuse(say("Last day: write it as 2026-11-25, or leave it empty while it lasts."));
    }
  }
  reaction.signs = signs_in(given[3]);
  reaction.note = given[4];
  return reaction;
}

/// A heading and a strip for each substance, or those that cannot be told apart, the likeliest
/// first.
void add_substances(WornChart& chart, const care::Suspects& found) {
  if (found.substances.suspects.empty()) return;
  const auto heading = found.side == Side::left
                           ? say("Left side: substances, until {} days after the last contact",
                                 care::carry_over_days)
                           : say("Right side: substances, until {} days after the last contact",
                                 care::carry_over_days);
  chart.strips.push_back({heading, "", "", {}});
  for (const auto& suspect : found.substances.suspects) {
    const auto more = suspect.alike.size() - 1;
    auto label = suspect.alike.front().name;
    if (more > 0) label = say("{} and {} more", label, more);
    chart.strips.push_back({"", label, suspect_words(suspect), suspect.alike.front().spans});
  }
}

}  // namespace

StockForm reaction_form(const Day& day, const PatientRef& patient) {
  StockForm form{said("Record a reaction"), {}, {},
                 said("&Record"),           {}, to_say("a reaction was recorded")};
  form.intro = say(
      "A reaction of the skin of {}. Signs are {}, or what you call it; several with commas. {}",
      patient_words(day, patient), usual_sign_words(), care_caution());
  std::vector<std::string> sides{no_side, to_say("left"), to_say("right")};
  const auto worn = care::sides_worn(day.clinic(), patient);
  const auto side = worn.size() == 1 ? std::string{word(worn.front())} : sides.front();
  form.fields = {
      {said("&Side"), side, said("Where it was seen"), std::move(sides), true},
      {said("&Began on"), iso_text(day.today()), said("The first day, such as 2026-11-25")},
      {said("&Last day"), "", said("Empty while it lasts")},
      {said("Si&gns"), "",
       say("{}, or in your own words; several with commas", usual_sign_words())},
      {said("&Note"), "", said("Anything else, such as where on the limb")}};
  const Date today = day.today();
  form.book = [patient, today](store::UnitOfWork& work,
                               const std::vector<std::string>& given) -> Expected<Booked> {
    auto reaction = read_reaction(patient, given);
    if (reaction) reaction = record_reaction(work, std::move(*reaction), today);
    if (!reaction) return tl::unexpected{reaction.error()};
    Booked made;
    made.notes.push_back(say("Recorded for {}: {}.", patient.text, reaction_words(*reaction)));
    return made;
  };
  return form;
}

Expected<StockForm> healed_form(const Day& day, const PatientRef& patient) {
  std::vector<std::string> choices;
  std::vector<Reaction> lasting;
  for (const Reaction& reaction : day.clinic().reactions) {
    if (reaction.patient != patient || reaction.ended_on) continue;
    choices.push_back(reaction_words(reaction));
    lasting.push_back(reaction);
  }
  if (lasting.empty()) {
    return refuse(say("No reaction of {} is recorded that still lasts.", patient.text));
  }
  StockForm form{said("A reaction healed"), {}, {},
                 said("&Record"),           {}, to_say("a reaction ended")};
  form.intro = say("For {}.", patient_words(day, patient));
  form.fields = {{said("&Reaction"), choices[0], said("Those that last"), choices, true},
                 {said("&Last day"), iso_text(day.today()), said("Such as 2026-11-25")}};
  const Date today = day.today();
  form.book = [choices, lasting, today](store::UnitOfWork& work,
                                        const std::vector<std::string>& given) -> Expected<Booked> {
    const auto last = parse_iso_date(given[1]);
    if (!last) return refuse(say("Last day: write it as 2026-11-25."));
    const auto at = std::ranges::find(choices, given[0]) - choices.begin();
    const Reaction& chosen = lasting.at(static_cast<std::size_t>(at));
    const auto ended =
        end_reaction(work, {chosen.patient.text, chosen.side, chosen.began_on}, *last, today);
    if (!ended) return tl::unexpected{ended.error()};
    Booked made;
    made.notes.push_back(say("Recorded for {}: {}.", chosen.patient.text, reaction_words(*ended)));
    return made;
  };
  return form;
}

ReactionsView reactions_view(const Day& day, const PatientRef& patient) {
  ReactionsView view;
  view.intro =
      say("What {} wore on the skin, and when reactions began.", patient_words(day, patient));
  view.reference = patient.text;
  view.chart = worn_chart(day.clinic(), patient, day.today());
  const auto found = suspects_of_patient(day.clinic(), patient, day.today());
  for (const auto& side : found) add_substances(view.chart, side);
  for (const auto& caution : suspect_cautions()) view.text += caution + "\n";
  view.text += "\n";
  for (const auto& side : found) view.text += suspects_text(side) + "\n";
  view.text += said("Reactions, by their number in the drawing:\n") + numbered_log(view.chart);
  view.text.pop_back();
  return view;
}

}  // namespace sparewell::desk

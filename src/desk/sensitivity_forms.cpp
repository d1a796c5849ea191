#include "desk/sensitivity_forms.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/reexamined_words.hpp"
#include "desk/sensitivity_work.hpp"
#include "desk/substance_table.hpp"
#include "desk/wear_decision.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// What a change tells whoever made it.
Expected<Booked> told_booked(const Expected<Reexamined>& change, const store::UnitOfWork& work) {
  if (!change) return tl::unexpected(change.error());
  const Clinic clinic = read_for_examination(work);
  Booked booked;
  booked.notes = reexamined_lines(*change, ClinicIndex{clinic});
  return booked;
}

std::string part_of(const Day& day, const ItemCode& code) {
  const Item* item = day.index().item(code);
  return item ? fmt::format("{} ({})", item_words(*item), code.text) : code.text;
}

StockForm withdraw_form(const Day& day, const PatientFinding& finding) {
  StockForm form{said("Withdraw a decision"), {}, {},
                 said("&Withdraw"),           {}, to_say("a decision was withdrawn")};
  form.intro = fmt::format("{}: {}", patient_words(day, finding.patient), finding.finding.words);
  form.fields = {
      {said("&Why"), "", said("Goes into the change log; the decision stays on record")}};
  const DecisionRequest request{finding.patient.text, finding.item.text, finding.substance, "", ""};
  form.book = [request, today = day.today()](store::UnitOfWork& work,
                                             const std::vector<std::string>&) -> Expected<Booked> {
    const auto gone = withdraw(work, request, today);
    if (!gone) return tl::unexpected(gone.error());
    Booked booked;
    for (const auto& each : *gone) booked.notes.push_back(decision_words(each));
    return booked;
  };
  return form;
}

}  // namespace

StockForm decision_form(const Day& day, const PatientFinding& finding) {
  if (finding.decided) return withdraw_form(day, finding);
  StockForm form{said("Decide about a part"),  {}, {}, said("&Decide"), {},
                 to_say("a clinician decided")};
  form.intro = say(
      "{}, {}. {} A clinician may decide that the part may be worn all the same. The decision is "
      "kept, is shown with every check, and has to be made again when the part is found to hold "
      "more, or the sensitivity is noted anew.",
      patient_words(day, finding.patient), part_of(day, finding.item), finding.finding.words);
  form.fields = {{said("&Clinician"), "", said("Who decides")},
                 {said("&Reason"), "", said("Why it may be worn all the same; it is kept")}};
  const DecisionRequest asked{finding.patient.text, finding.item.text, finding.substance, "", ""};
  form.book = [asked, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    auto request = asked;
    request.by = given[0];
    request.reason = given[1];
    const auto made = decide(work, request, today);
    if (!made) return tl::unexpected(made.error());
    Booked booked;
    booked.notes.push_back(decision_words(*made));
    return booked;
  };
  return form;
}

StockForm sensitivity_form(const Day& day, const PatientRef& patient) {
  StockForm form{said("Note a sensitivity"), {}, {},
                 said_of("button", "&Note"), {}, to_say("a sensitivity was noted")};
  form.intro =
      say("{}. All parts worn, booked or on order are examined anew.", patient_words(day, patient));
  form.fields = {
      {said("&Substance"), "", said("What the patient reacts to, such as mineral oil")},
      {said("&Established by"), ways_to_establish()[0], said("How it is known"),
       ways_to_establish(), true},
      {said("&Reaction"), "", said("Such as redness, itching or blisters; may be empty")},
      {said("&Noted on"), iso_text(day.today()), said("Such as 2026-11-25")}};
  form.book = [patient, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    const auto noted_on = parse_iso_date(given[3]);
    if (!noted_on) {
      return refuse(say("'{}' is not a day; write one such as {}.", given[3], iso_text(today)));
    }
    return told_booked(
        note_sensitivity(work, {patient, given[0], given[2], given[1], noted_on}, today), work);
  };
  return form;
}

StockForm constituents_form(const Day& day, const ItemCode& item) {
  StockForm form{said("Constituents"), {}, {},
                 said("&Change"),      {}, to_say("constituents were changed")};
  const Item* known = day.index().item(item);
  const auto declared =
      known ? fmt::format("{}", fmt::join(known->constituents, "; ")) : std::string{};
  form.intro = say(
      "{}: what its maker declares that it is made of, with ; between the names. Empty says that "
      "nothing is declared, which is never taken as safe. Everyone is examined anew.",
      part_of(day, item));
  form.fields = {
      {said("&Declares"), declared, said("Such as silicone elastomer; polyamide fabric")}};
  form.book = [item, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    return told_booked(set_constituents(work, item, parts_of_list(given[0], ";"), today), work);
  };
  return form;
}

StockForm relation_form(const Day& day) {
  StockForm form{said("Note about substances"), {}, {},
                 said_of("button", "&Note"),    {}, to_say("a substance relation was noted")};
  form.intro = said(
      "How two substances are related, beyond what the program knows. Everyone is examined anew.");
  std::vector<std::string> relations;
  for (const auto each : words<SubstanceRelation>()) relations.emplace_back(each);
  form.fields = {
      {said("&Substance"), "", said("As makers or patch tests write it")},
      {said("&Relation"), relations[0],
       said("is a: it belongs to a group; same as: another name; may contain: a residue"),
       relations, true},
      {said("&Other"), "", said("The group, the other name, or what it may contain")},
      {said("&Known from"), "", said("Such as a maker's letter of a day")}};
  form.book = [today = day.today()](store::UnitOfWork& work,
                                    const std::vector<std::string>& given) -> Expected<Booked> {
    const auto relation = parse_word<SubstanceRelation>(given[1]);
    if (!relation) return refuse(say("Choose how the substances are related."));
    return told_booked(
        add_relation(work, {given[0], *relation, given[2], given[3], std::nullopt}, today), work);
  };
  return form;
}

}  // namespace sparewell::desk

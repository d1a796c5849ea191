#include "desk/issue_words.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/trend_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;
using care::Verdict;

std::string step_words(care::Relation relation, const std::string& name) {
  switch (relation) {
    case care::Relation::same_as:
      return say(", which is another name for {}", name);
    case care::Relation::may_contain:
      return say(", which may contain {}", name);
    default:
      return say(", which is a kind of {}", name);
  }
}

/// "mineral oil, which is a kind of petrolatum-type hydrocarbons".
std::string path_words(const care::SubstancePath& path) {
  auto text = path.names.front();
  for (std::size_t i = 0; i < path.relations.size(); ++i) {
    text += step_words(path.relations[i], path.names[i + 1]);
  }
  return text;
}

std::string recorded_words(const Sensitivity& recorded) {
  std::vector<std::string> more;
  if (!recorded.reaction.empty()) more.push_back(recorded.reaction);
  if (!recorded.established_by.empty()) more.push_back(recorded.established_by);
  return more.empty() ? recorded.substance
                      : fmt::format("{} ({})", recorded.substance, fmt::join(more, ", "));
}

std::string possible_words(const care::SensitivityVerdict& verdict, const Item& item) {
  const auto recorded = recorded_words(verdict.recorded);
  if (verdict.upwards && verdict.path.certain()) {
    const auto& held = verdict.path.names.back();
    const auto path = path_words(verdict.path);
    return verdict.assumed
               ? say("Possible conflict with the recorded sensitivity to {}: the part is taken to "
                     "hold {}, and {}.",
                     recorded, held, path)
               : say("Possible conflict with the recorded sensitivity to {}: the part declares "
                     "{}, and {}.",
                     recorded, held, path);
  }
  const auto group = verdict.upwards
                         ? say(", a group that {} belongs to", verdict.recorded.substance)
                         : std::string{};
  if (!verdict.assumed) {
    return say(
        "Possible conflict with the recorded sensitivity to {}: the part declares "
        "{}{}.",
        recorded, path_words(verdict.path), group);
  }
  return say(
      "Possible conflict with the recorded sensitivity to {}: the maker declares nothing, but such "
      "a part of {} usually holds {}{}.",
      recorded, shown_word(item.material), path_words(verdict.path), group);
}

std::string not_declared_words(const care::SensitivityVerdict& verdict, const Item& item) {
  const auto recorded = recorded_words(verdict.recorded);
  if (item.constituents.empty()) {
    return say(
        "Not declared: the catalogue does not say what the part is made of, so the "
        "sensitivity to {} is not answered; ask the maker.",
        recorded);
  }
  return say(
      "Not answered for the sensitivity to {}: the table of substances does not "
      "know {}, which could only be compared by name; ask the maker.",
      recorded, list_words(verdict.unknown));
}

std::string verdict_words(const care::SensitivityVerdict& verdict, const Item& item) {
  switch (verdict.verdict) {
    case Verdict::conflict:
      return say("Conflict with the recorded sensitivity to {}: the part declares {}.",
                 recorded_words(verdict.recorded), path_words(verdict.path));
    case Verdict::possible_conflict:
      return possible_words(verdict, item);
    case Verdict::not_declared:
      return not_declared_words(verdict, item);
    case Verdict::none_known:
      return say(
          "No conflict is known with the sensitivity to {}: nothing that the part "
          "declares ({}) is related to it.",
          recorded_words(verdict.recorded), list_words(item.constituents));
    default:
      return said(
          "No sensitivity is recorded, which does not mean that there is none: ask the patient.");
  }
}

std::string verdict_key(Verdict verdict) {
  static constexpr const char* keys[] = {"conflict", "possible_conflict", "not_declared",
                                         "none_known", "nothing_recorded"};
  return keys[static_cast<std::size_t>(verdict)];
}

std::string unknown_fit_words(const care::FitCheck& check, const Item& item, Side side) {
  if (!check.at_cm) {
    return say(
        "Whether the size fits is not known: the catalogue does not say at what "
        "height the {} are measured.",
        range_words(item));
  }
  return say(
      "Whether the size fits is not known: the {} side has no measurement at {}, "
      "or below and above it; measure before handing it over.",
      shown_word(side), short_length_words(*check.at_cm));
}

std::string measured_words(const care::FitCheck& check) {
  const auto circumference = length_words(check.circumference_cm.value_or(0));
  const auto at = short_length_words(check.at_cm.value_or(0));
  auto text = check.measured_on ? say("measured {} at {} on {}", circumference, at,
                                      date_words(*check.measured_on))
                                : say("measured {} at {} on no day", circumference, at);
  if (check.interpolated) text += said(", between the heights measured");
  return text;
}

std::string edge_words(const care::FitCheck& check, const Item& item) {
  const auto range = range_words(item);
  const auto measured = measured_words(check);
  const auto repeats = length_words(care::fit_tolerance_cm(check.circumference_cm.value_or(0)));
  return check.fit == care::Fit::edge_smaller
             ? say("The limb is at the edge of the size, {}: {}, which is less than the range by "
                   "less than a tape repeats ({}); measure again before deciding.",
                   range, measured, repeats)
             : say("The limb is at the edge of the size, {}: {}, which is more than the range by "
                   "less than a tape repeats ({}); measure again before deciding.",
                   range, measured, repeats);
}

std::string lot_of(const StockLevel& piece) {
  return piece.lot.lot.empty() ? said("The piece without a lot number")
                               : say("Lot {}", piece.lot.lot);
}

}  // namespace

std::string function_words(care::Function function) {
  return shown_word(function);
}

IssueFinding sensitivity_finding(const care::SensitivityVerdict& verdict, const Item& item) {
  auto words = verdict_words(verdict, item);
  const bool grave = verdict.verdict <= Verdict::possible_conflict;
  if (grave && !care::usually_touches_skin(item.kind)) {
    words += said(" Such a part does not usually touch the skin.");
  }
  if (verdict.decided) {
    words +=
        say(" On {} {} decided that it may be worn: {}.", date_words(verdict.decided->decided_on),
            verdict.decided->decided_by, verdict.decided->reason);
  }
  return {verdict_key(verdict.verdict), care::gravity(verdict), true, std::move(words)};
}

IssueFinding fit_finding(const care::FitCheck& check, const Item& item, Side side) {
  IssueFinding made{"", care::gravity(check), true, ""};
  const auto old = check.old ? said(" That was more than six months ago; measure again.") : "";
  switch (check.fit) {
    case care::Fit::no_size:
      made.key = "no_size";
      made.words = said("The part has no size range, so that nothing is checked.");
      return made;
    case care::Fit::not_known:
      made.key = "size_not_known";
      made.words = unknown_fit_words(check, item, side);
      return made;
    case care::Fit::fits:
      made.key = check.old ? "measurement_old" : "size_fits";
      made.words = say("The size, {}, fits: {}.{}", range_words(item), measured_words(check), old);
      return made;
    case care::Fit::edge_smaller:
    case care::Fit::edge_larger:
      made.key = "size_at_edge";
      made.words = edge_words(check, item);
      return made;
    default: {
      const bool smaller = check.fit == care::Fit::limb_smaller;
      made.key = smaller ? "size_too_large" : "size_too_small";
      made.words = smaller ? say("The size, {}, is too large: {}.{}", range_words(item),
                                 measured_words(check), old)
                           : say("The size, {}, is too small: {}.{}", range_words(item),
                                 measured_words(check), old);
      return made;
    }
  }
}

IssueFinding attachment_finding(const care::AttachmentFinding& found, const Item& item,
                                Suspension suspension) {
  const auto part = capitalised(kind_words(item));
  switch (found.mismatch) {
    case care::Mismatch::thread_differs:
      return {"thread_differs", Gravity::ask, true,
              say("The threads differ: {} here, {} on the {} worn ({}).", item.thread,
                  found.other->thread, kind_words(*found.other), found.other->code.text)};
    case care::Mismatch::thread_not_stated:
      return {"thread_not_stated", Gravity::ask, true,
              say("The threads cannot be compared: the catalogue does not state that of {}.",
                  item.thread.empty() ? item.code.text : found.other->code.text)};
    case care::Mismatch::materials_meet:
      return {"materials_meet", care::gravity(found.mismatch), true,
              say("{} here and the {} worn ({}): {}.", part, kind_words(*found.other),
                  found.other->code.text, found.pair->advice)};
    case care::Mismatch::liner_not_for_this:
      return {"liner_not_for_suspension", Gravity::ask, true,
              say("{}: the prosthesis is held by {} suspension, which takes another kind of "
                  "liner.",
                  part, shown_word(suspension))};
    default:
      return {"not_in_suspension", Gravity::ask, true,
              say("{}: the prosthesis is held by {} suspension, in which it has no work.", part,
                  shown_word(suspension))};
  }
}

IssueFinding missing_finding(care::Function function, Suspension suspension, Side side) {
  return {"function_missing", Gravity::ask, true,
          say("{} suspension needs a {}, and no such part is recorded as worn on the {} "
              "side: issue one, or record the one that is worn.",
              capitalised(shown_word(suspension)), function_words(function), shown_word(side))};
}

IssueFinding chain_finding(const std::vector<care::Function>& missing, Suspension suspension) {
  if (missing.empty()) {
    return {"chain_complete", Gravity::note, true,
            say("After this, nothing that {} suspension needs is missing on that side.",
                shown_word(suspension))};
  }
  std::vector<std::string> names;
  for (const auto function : missing) names.push_back(function_words(function));
  return {"chain_incomplete", Gravity::note, true,
          say("After this, {} suspension still lacks on that side: {}.", shown_word(suspension),
              list_words(names))};
}

IssueFinding piece_finding(const care::PieceFinding& found, Date day,
                           std::optional<int> expected_days, bool own) {
  const auto lot = lot_of(found.piece);
  const auto use_by = date_words(found.piece.lot.use_by, said("not recorded"));
  const auto gravity = found.gravity();
  switch (found.fault) {
    case care::PieceFault::expired:
      return {"expired", gravity, true,
              say("{} has expired: its use-by date was {}.", lot, use_by)};
    case care::PieceFault::quarantined:
      return {"quarantined", gravity, true, say("{} is held back in quarantine.", lot)};
    case care::PieceFault::recalled:
      return {"recalled", gravity, true,
              say("{} was recalled: a part of it was taken from a patient for that reason.", lot)};
    case care::PieceFault::others_quarantined:
      return {"lot_in_quarantine", gravity, true,
              say("Other pieces of {} are held back in quarantine; find out why.",
                  found.piece.lot.lot)};
    case care::PieceFault::short_dated: {
      const auto left = span_words(days_between(day, *found.piece.lot.use_by));
      const auto lasts = span_words(expected_days.value_or(0));
      return {"short_dated", gravity, true,
              own ? say("{} is to be used by {}, in {}, but such a part is expected to last about "
                        "{} with this patient, by the forecast.",
                        lot, use_by, left, lasts)
                  : say("{} is to be used by {}, in {}, but such a part is expected to last about "
                        "{} in reference use.",
                        lot, use_by, left, lasts)};
    }
    default:
      return {"no_use_by", gravity, true,
              say("{} has no use-by date on record, although such parts expire; look at the "
                  "label.",
                  lot)};
  }
}

IssueFinding patient_finding(care::PatientFault fault, Side side, const Item& item) {
  const auto gravity = care::gravity(fault);
  switch (fault) {
    case care::PatientFault::deceased:
      return {"deceased", gravity, true, said("The patient is recorded as deceased.")};
    case care::PatientFault::no_prosthesis:
      return {"no_prosthesis", gravity, true,
              say("No prosthesis is recorded on the {} side on that day, so that suspension "
                  "and threads were not checked against one.",
                  shown_word(side))};
    default:
      return {"two_in_use", gravity, true,
              say("Two or more parts of this kind ({}) are in use on the {} side already; "
                  "end those that are not.",
                  kind_words(item), shown_word(side))};
  }
}

std::string issue_text(const IssueCheck& check) {
  std::string text;
  for (const auto& finding : check.findings) {
    text += fmt::format("{}: {}\n", gravity_words(finding.gravity), finding.words);
  }
  for (const auto& piece : check.taken) {
    text += say("Take {} of lot {} from {}.\n", piece.quantity,
                piece.lot.lot.empty() ? said("no number") : piece.lot.lot, piece.place);
  }
  return text + care_caution();
}

}  // namespace sparewell::desk

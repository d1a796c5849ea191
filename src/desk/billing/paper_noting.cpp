#include "desk/billing/paper_noting.hpp"

#include <algorithm>
#include <array>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// The usual papers, in quotes as shown_paper looks them up: without them "order" is one to a
/// supplier. A translation keeps the quotes.
constexpr std::array quoted_papers{to_say("\"order\""), to_say("\"reason\""),
                                   to_say("\"condition\""), to_say("\"cost share\"")};

std::string without_quotes(std::string_view quoted) {
  return std::string{quoted.substr(1, quoted.size() - 2)};
}

bool is_meant(const PaperRequest& request, const Unit& unit) {
  return unit.patient.text == request.patient && (!request.side || unit.side == *request.side) &&
         unit.item.text == request.item && (request.lot.empty() || unit.lot == request.lot) &&
         (request.serial.empty() || unit.serial == request.serial) &&
         (!request.issued_on || unit.issued_on == *request.issued_on);
}

PartPaper paper_of(const Unit& unit, const PaperRequest& request) {
  PartPaper made;
  made.patient = unit.patient;
  made.side = unit.side;
  made.item = unit.item;
  made.lot = unit.lot;
  made.serial = unit.serial;
  made.issued_on = unit.issued_on;
  made.copy = unit.copy;
  made.paper = request.paper;
  made.dated_on = request.dated_on;
  made.words = request.words;
  made.noted_by = request.by;
  return made;
}

Expected<std::vector<Unit>> units_meant(const store::Snapshot& snapshot,
                                        const PaperRequest& request) {
  std::vector<Unit> meant;
  std::set<std::pair<Date, Side>> issues;
  for (auto& row : snapshot.units_of({request.item})) {
    if (!is_meant(request, row.record)) continue;
    issues.emplace(row.record.issued_on, row.record.side);
    meant.push_back(std::move(row.record));
  }
  if (meant.empty()) {
    return refuse(say("No such part {} was handed to patient {}; check item and patient.",
                      request.item, request.patient));
  }
  if (issues.size() > 1) {
    return refuse(
        say("{} was handed to patient {} {} times; name the side and the day of issue as well.",
            request.item, request.patient, issues.size()));
  }
  return meant;
}

}  // namespace

Expected<std::vector<PartPaper>> note_paper(store::UnitOfWork& work, const PaperRequest& request,
                                            Date today) {
  if (request.paper.empty()) return refuse(say("Say which paper it is, such as order or reason."));
  if (request.dated_on > today) {
    return refuse(say("{} lies after today; write the day that stands on the paper.",
                      iso_text(request.dated_on)));
  }
  const auto units = units_meant(work, request);
  if (!units) return tl::unexpected(units.error());
  const auto stored = work.all<PartPaper>();
  std::vector<PartPaper> noted;
  for (const Unit& unit : *units) {
    auto paper = paper_of(unit, request);
    const bool is_there = std::ranges::any_of(stored, [&](const auto& row) {
      return row.record.is_of(unit) && row.record.paper == paper.paper &&
             row.record.dated_on == paper.dated_on;
    });
    if (is_there) continue;
    work.put(paper);
    noted.push_back(std::move(paper));
  }
  if (noted.empty()) {
    return refuse(say("The paper \"{}\" of {} is on record for that part already.",
                      shown_paper(request.paper), date_words(request.dated_on)));
  }
  return noted;
}

std::string paper_words(const PartPaper& paper) {
  auto text = say("{}, {}, {} issued {}: {} of {}", paper.patient.text, shown_word(paper.side),
                  paper.item.text, date_words(paper.issued_on), shown_paper(paper.paper),
                  date_words(paper.dated_on));
  if (!paper.words.empty()) text += fmt::format(", {}", paper.words);
  if (!paper.noted_by.empty()) text += fmt::format(" ({})", paper.noted_by);
  return fmt::format("{}.", text);
}

std::vector<std::string> usual_papers() {
  std::vector<std::string> papers;
  for (const auto* quoted : quoted_papers) papers.push_back(without_quotes(quoted));
  return papers;
}

std::string shown_paper(const std::string& paper) {
  return without_quotes(said(fmt::format("\"{}\"", paper).c_str()));
}

std::string paper_meant(const std::string& shown) {
  for (auto& paper : usual_papers()) {
    if (shown_paper(paper) == shown) return std::move(paper);
  }
  return shown;
}

StockForm paper_form(const Day& day, const Unit& unit, const std::string& paper) {
  StockForm form{said("Note a paper"),       {}, {},
                 said_of("button", "&Note"), {}, to_say("a paper of a part was noted")};
  const Item* item = day.index().item(unit.item);
  form.intro =
      say("{}, {} side: {}, {}, issued {}. A reason says why a part was replaced: the patient's "
          "condition has changed, the part can no longer be repaired, or the repair would cost too "
          "large a share of a new one.",
          patient_words(day, unit.patient), shown_word(unit.side),
          item ? item_words(*item) : unit.item.text, lot_words(unit), date_words(unit.issued_on));
  std::vector<std::string> papers;
  for (const auto& each : usual_papers()) papers.push_back(shown_paper(each));
  form.fields = {
      {said("&Paper"), shown_paper(paper.empty() ? "reason" : paper),
       said("What it is: order, reason, condition, cost share, or your own word"), papers},
      {said("&Dated"), iso_text(day.today()), said("The day on the paper, such as 2026-11-25")},
      {said("It &says"), "", said("What it says in short, or where it lies")},
      {said("&By"), "", said("Who puts it on record")}};
  form.book = [unit, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    const auto dated = parse_iso_date(given[1]);
    if (!dated) {
      return refuse(say("'{}' is not a day; write one such as {}.", given[1], iso_text(today)));
    }
    const auto noted =
        note_paper(work,
                   {unit.patient.text, unit.side, unit.item.text, unit.lot, unit.serial,
                    unit.issued_on, paper_meant(given[0]), *dated, given[2], given[3]},
                   today);
    if (!noted) return tl::unexpected(noted.error());
    Booked booked;
    booked.notes.push_back(paper_words(noted->front()));
    return booked;
  };
  return form;
}

}  // namespace sparewell::desk

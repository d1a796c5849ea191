#include "desk/papers/parts_list.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/papers/care_notes.hpp"
#include "desk/papers/when_it_fails.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::Pictogram;
using exchange::PicturedSection;

/// When to ask for the next one; a span, because no single day would be true.
std::string ask_words(const PaperLanguage& language, const Forecast* forecast) {
  if (forecast == nullptr) return language.text("list.not_known");
  if (!forecast->p10) return language.text("list.not_worn");
  if (!forecast->p50) return language.filled("list.ask_from", language.date(*forecast->p10));
  return language.filled("list.ask_between", language.date(*forecast->p10),
                         language.date(*forecast->p50));
}

std::string use_by_words(const PaperLanguage& language, const wear::UseBy& use_by, Date today) {
  const auto day = language.date(use_by.day);
  if (use_by.day < today) return language.filled("list.use_by_passed", day);
  return language.filled(use_by.at_latest ? "list.use_by_latest" : "list.use_by", day);
}

/// Of parts alike, the one that is worn out first.
const Forecast* first_of(const Day& day, const PartsAlike& part) {
  const Forecast* first = nullptr;
  for (const auto unit : part.units) {
    const auto* forecast = day.forecast(unit);
    if (forecast == nullptr) continue;
    const bool sooner =
        first == nullptr || !first->p10 || (forecast->p10 && *forecast->p10 < *first->p10);
    if (sooner) first = forecast;
  }
  return first;
}

exchange::ListedPart listed(const PaperLanguage& language, const Day& day, const PartsAlike& part) {
  const auto* item = day.index().item(part.item);
  exchange::ListedPart made;
  auto name = capitalised(part_on_paper(language, item, part.item));
  if (part.units.size() > 1) name = fmt::format("{} × {}", part.units.size(), name);
  made.name = {picture_of(item), std::move(name), true};
  auto known = lot_on_paper(language, part.lot, part.serials);
  if (item && !item->description.empty()) known = fmt::format("{}; {}", item->description, known);
  made.details.push_back(
      fmt::format("{}. {}", known, language.filled("list.since", language.date(part.issued_on))));
  const auto* forecast = first_of(day, part);
  auto until = ask_words(language, forecast);
  if (forecast && forecast->use_by) {
    until += fmt::format(" {}", use_by_words(language, *forecast->use_by, day.today()));
  }
  made.details.push_back(std::move(until));
  return made;
}

/// The notes of each kind and material in use, once.
std::vector<PicturedSection> care_of(const PaperLanguage& language, const Day& day,
                                     const std::vector<PartsAlike>& parts) {
  std::vector<PicturedSection> made;
  std::vector<std::pair<Kind, Material>> done;
  for (const auto& part : parts) {
    const auto* item = day.index().item(part.item);
    if (item == nullptr) continue;
    const std::pair which{item->kind, item->material};
    if (std::ranges::find(done, which) != done.end()) continue;
    done.push_back(which);
    Item named;
    named.kind = item->kind;
    named.material = item->material;
    PicturedSection section;
    section.heading.words = language.filled("list.care", part_on_paper(language, &named, {}));
    for (const auto* note : care_notes_of(*item)) {
      section.lines.push_back({note->picture, language.text(note->key)});
    }
    made.push_back(std::move(section));
  }
  return made;
}

PicturedSection cautions_of(const PaperLanguage& language, const Day& day,
                            const PatientRef& patient) {
  PicturedSection made;
  made.heading.words = language.text("list.cautions");
  made.lines = {{Pictogram::look, language.text("skin.look")},
                {Pictogram::no_chemicals, language.text("skin.chemicals")}};
  for (auto& each : when_it_fails(language, day.clinic(), patient, day.today())) {
    made.lines.push_back(std::move(each));
  }
  made.lines.push_back({Pictogram::question, language.text("caution.ask")});
  made.lines.push_back({Pictogram::none, language.text("caution.maker")});
  made.lines.push_back({Pictogram::none, language.text("caution.judgement")});
  return made;
}

}  // namespace

exchange::PartsList parts_list(const PaperLanguage& language, const Day& day,
                               const PatientRef& patient, bool name) {
  const auto& clinic = day.clinic();
  const auto parts = parts_in_use(clinic, day.index(), patient, day.today());
  exchange::PartsList list;
  list.clinic_name = clinic_on_paper(language, clinic.settings);
  list.clinic_address = clinic.settings.ship_to;
  list.title = language.text("list.title");
  list.patient = patient_on_paper(language, *day.index().patient(patient), name);
  list.written_on = language.filled("caution.records", language.date(day.today()));
  list.explained = {language.text(parts.empty() ? "list.none" : "list.explained")};
  for (const auto& part : parts) {
    const auto heading = side_heading_on_paper(language, part.side);
    if (list.sides.empty() || list.sides.back().heading != heading) {
      list.sides.push_back({heading, {}});
    }
    list.sides.back().parts.push_back(listed(language, day, part));
  }
  list.sensitivities = reactions_on_paper(language, clinic, patient);
  list.care = care_of(language, day, parts);
  list.cautions = cautions_of(language, day, patient);
  list.page_numbers = language.text("page");
  return list;
}

Expected<int> print_parts_list(const Day& day, const PatientRef& patient, const PatientPaper& how,
                               const std::string& path) {
  if (day.index().patient(patient) == nullptr) {
    return refuse(say("There is no patient '{}'; check the reference.", patient.text));
  }
  const auto languages = languages_of(how);
  if (!languages) return tl::unexpected{languages.error()};
  std::vector<exchange::PartsList> lists;
  for (const auto* language : *languages) {
    lists.push_back(parts_list(*language, day, patient, how.names));
  }
  return exchange::write_parts_lists(lists, how.paper, path);
}

}  // namespace sparewell::desk

#include "desk/papers/paper_parts.hpp"

#include <algorithm>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/day.hpp"

namespace sparewell::desk {
namespace {

using exchange::Pictogram;

/// The key of a word in the files of languages: "mineral_oil_gel".
std::string key_of(std::string_view sort, std::string_view word) {
  auto key = fmt::format("{}{}", sort, word);
  std::ranges::replace_if(
      key, [](char c) { return c == ' ' || c == '-'; }, '_');
  return key;
}

std::string established_words(const PaperLanguage& language, const std::string& recorded) {
  if (recorded.empty()) return language.text("established.not_recorded");
  for (const auto* word : {"patch test", "observed", "reported"}) {
    if (same_word(word, recorded)) return language.text(key_of("established.", word));
  }
  return recorded;
}

}  // namespace

std::string kind_on_paper(const PaperLanguage& language, const Item& item) {
  auto key = key_of("kind.", word(item.kind));
  if (item.kind == Kind::liner) key += key_of(".", word(item.attachment));
  return language.text(key);
}

std::string part_on_paper(const PaperLanguage& language, const Item* item, const ItemCode& code) {
  if (item == nullptr) return language.filled("part.code", code.text);
  auto words = kind_on_paper(language, *item);
  // Of metal parts and of socks the kind says enough.
  const bool told = item->material != Material::other && item->material != Material::metal &&
                    item->material != Material::fabric;
  if (told) {
    words += fmt::format(", {}", language.text(key_of("material.", word(item->material))));
  }
  if (!item->size_label.empty()) {
    words += fmt::format(", {}", language.filled("part.size", item->size_label));
  }
  if (!item->thread.empty()) {
    words += fmt::format(", {}", language.filled("part.thread", item->thread));
  }
  return words;
}

std::string side_on_paper(const PaperLanguage& language, Side side) {
  return language.text(key_of("side.", word(side)));
}

std::string side_heading_on_paper(const PaperLanguage& language, Side side) {
  return language.text(fmt::format("side.{}.heading", word(side)));
}

std::string prosthesis_on_paper(const PaperLanguage& language, const Prosthesis& worn) {
  return fmt::format("{}, {}", language.text(key_of("prosthesis.", word(worn.level))),
                     language.text(key_of("suspension.", word(worn.suspension))));
}

std::string function_on_paper(const PaperLanguage& language, care::Function function) {
  static constexpr const char* keys[] = {
      "kind.liner.locking", "kind.liner.cushion", "kind.liner.seal", "kind.sleeve",
      "kind.pin",           "kind.lock",          "kind.valve",      "kind.pump"};
  return language.text(keys[static_cast<std::size_t>(function)]);
}

std::string lot_on_paper(const PaperLanguage& language, const std::string& lot,
                         const std::vector<std::string>& serials) {
  if (lot.empty() && serials.empty()) return language.text("part.no_lot");
  std::string words = lot.empty() ? "" : language.filled("part.lot", lot);
  if (serials.empty()) return words;
  if (!words.empty()) words += ", ";
  const auto all = fmt::format("{}", fmt::join(serials, ", "));
  return words + language.filled(serials.size() == 1 ? "part.serial" : "part.serials", all);
}

Pictogram picture_of(const Item* item) {
  if (item == nullptr) return Pictogram::question;
  switch (item->kind) {
    case Kind::liner:
      if (item->attachment == Attachment::locking) return Pictogram::liner_with_pin;
      return item->attachment == Attachment::seal ? Pictogram::liner_with_seal : Pictogram::liner;
    case Kind::sleeve:
      return Pictogram::sleeve;
    case Kind::lock:
      return Pictogram::lock;
    case Kind::pin:
      return Pictogram::pin;
    case Kind::valve:
      return Pictogram::valve;
    case Kind::pump:
      return Pictogram::pump;
    default:
      return Pictogram::sock;
  }
}

std::vector<PartsAlike> parts_in_use(const Clinic& clinic, const ClinicIndex& index,
                                     const PatientRef& patient, Date day) {
  std::vector<PartsAlike> made;
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const auto& unit = clinic.units[i];
    if (unit.patient != patient || !unit.in_use_on(day)) continue;
    auto alike = std::ranges::find_if(made, [&](const PartsAlike& each) {
      return each.side == unit.side && each.item == unit.item && each.lot == unit.lot &&
             each.issued_on == unit.issued_on;
    });
    if (alike == made.end()) {
      made.push_back({unit.side, unit.item, unit.lot, {}, unit.issued_on, {}});
      alike = std::prev(made.end());
    }
    if (!unit.serial.empty()) alike->serials.push_back(unit.serial);
    alike->units.push_back(i);
  }
  std::ranges::stable_sort(made, {}, [&](const PartsAlike& each) {
    const auto* item = index.item(each.item);
    return std::tuple{each.side, item ? static_cast<int>(item->kind) : 99, each.issued_on};
  });
  return made;
}

exchange::PicturedSection reactions_on_paper(const PaperLanguage& language, const Clinic& clinic,
                                             const PatientRef& patient) {
  exchange::PicturedSection made;
  made.heading = {Pictogram::warning, language.text("reacts"), true};
  for (const auto& noted : clinic.sensitivities) {
    if (noted.patient != patient) continue;
    auto words = language.recorded("substance.", noted.substance);
    if (!noted.reaction.empty()) {
      words += fmt::format(": {}", language.recorded("reaction.", noted.reaction));
    }
    words += fmt::format("; {}", established_words(language, noted.established_by));
    made.lines.push_back({Pictogram::reacts, std::move(words), true});
  }
  if (made.lines.empty()) {
    made.lines.push_back({Pictogram::question, language.text("reacts.none"), false});
  }
  return made;
}

std::string patient_on_paper(const PaperLanguage& language, const Patient& patient, bool name) {
  auto words = language.filled("patient", patient.ref.text);
  const auto known = name ? full_name(patient) : std::string{};
  return known.empty() ? words : fmt::format("{}   {}", words, known);
}

std::string clinic_on_paper(const PaperLanguage& language, const ClinicSettings& settings) {
  return settings.name.empty() ? language.text("clinic.unnamed") : settings.name;
}

Expected<std::vector<const PaperLanguage*>> languages_of(const PatientPaper& paper) {
  std::vector<const PaperLanguage*> made;
  std::vector<std::string> known;
  for (const auto& each : paper_languages()) known.push_back(each.code());
  for (const auto& code : paper.languages) {
    const auto* language = paper_language(code);
    if (language == nullptr) {
      return refuse(say("There is no language '{}' for papers; name one of: {}.", code,
                        fmt::join(known, ", ")));
    }
    if (std::ranges::find(made, language) == made.end()) made.push_back(language);
  }
  if (made.empty()) made.push_back(&paper_languages().front());
  return made;
}

}  // namespace sparewell::desk

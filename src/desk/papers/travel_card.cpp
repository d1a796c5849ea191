#include "desk/papers/travel_card.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "care/worn.hpp"
#include "desk/papers/when_it_fails.hpp"

namespace sparewell::desk {
namespace {

using exchange::Pictogram;
using exchange::PicturedSection;
using exchange::PicturedWords;

constexpr std::array sides{Side::left, Side::right};

class Card {
 public:
  Card(const PaperLanguage& language, const Clinic& clinic, const TravelCheck& check, Date today)
      : language_{language}, clinic_{clinic}, check_{check}, index_{clinic}, today_{today} {}

  [[nodiscard]] PicturedSection whose(bool name) const {
    const auto& request = check_.request;
    PicturedSection made;
    const auto* patient = index_.patient({request.patient});
    made.lines = {{Pictogram::none, patient_on_paper(language_, *patient, name), true},
                  {Pictogram::none, language_.filled("card.trip", language_.date(request.departure),
                                                     language_.date(request.back))}};
    if (request.delay_days > 0) {
      made.lines.push_back(
          {Pictogram::none, language_.filled("card.delay", language_.date(check_.last_day))});
    }
    return made;
  }

  [[nodiscard]] PicturedSection pack() const {
    PicturedSection made;
    made.heading = {Pictogram::suitcase, language_.text("card.pack"), true};
    for (const auto& part : check_.parts) add_spares(made, part);
    if (made.lines.empty()) {
      made.lines.push_back({Pictogram::question, language_.text("card.pack.none")});
    }
    if (!check_.reached) {
      made.lines.push_back({Pictogram::warning, language_.text("card.not_sure"), true});
    }
    made.lines.push_back({Pictogram::suitcase, language_.text("card.pack.also")});
    return made;
  }

  /// A section for each side of which something is known.
  [[nodiscard]] std::vector<PicturedSection> worn() const {
    std::vector<PicturedSection> made;
    const PatientRef patient{check_.request.patient};
    const auto parts = parts_in_use(clinic_, index_, patient, today_);
    for (const Side side : sides) {
      PicturedSection section;
      const auto on_side = care::worn_on(clinic_, index_, patient, side, today_);
      if (on_side.prosthesis != nullptr) {
        section.lines.push_back(
            {Pictogram::none, prosthesis_on_paper(language_, *on_side.prosthesis), true});
      }
      add_worn(section, parts, side);
      add_unknown(section, side);
      if (section.lines.empty()) continue;
      section.heading = {Pictogram::none,
                         language_.filled("card.worn.side", side_heading_on_paper(language_, side)),
                         true};
      made.push_back(std::move(section));
    }
    if (!made.empty()) return made;
    made.emplace_back().heading = {Pictogram::none, language_.text("card.worn"), true};
    made.back().lines = {{Pictogram::question, language_.text("card.worn.none")}};
    return made;
  }

  [[nodiscard]] PicturedSection care() const {
    PicturedSection made;
    made.heading = {Pictogram::none, language_.text("care"), true};
    made.lines = {{Pictogram::look, language_.text("skin.look")},
                  {Pictogram::wash, language_.text("skin.wash")},
                  {Pictogram::dry, language_.text("skin.dry")},
                  {Pictogram::take_off, language_.text("skin.sand")},
                  {Pictogram::no_chemicals, language_.text("skin.chemicals")}};
    return made;
  }

  [[nodiscard]] PicturedSection clinic() const {
    const auto& settings = clinic_.settings;
    PicturedSection made;
    std::string where;
    for (const char c : settings.ship_to) {
      if (c == '\n') {
        where += ", ";
      } else {
        where += c;
      }
    }
    if (where.empty()) where = language_.text("clinic.no_address");
    made.lines = {{Pictogram::clinic,
                   settings.name.empty() ? where : fmt::format("{}. {}", settings.name, where)},
                  {Pictogram::telephone, language_.text("clinic.telephone")}};
    return made;
  }

 private:
  void add_spares(PicturedSection& made, const TravelPart& part) const {
    const auto* item = index_.item(part.item);
    const auto name = fmt::format("{} ({})", part_on_paper(language_, item, part.item),
                                  side_on_paper(language_, part.side));
    const auto add_lots = [&](const std::vector<StockLevel>& levels) {
      std::map<std::string, int> lots;
      for (const auto& level : levels) lots[level.lot.lot] += level.quantity;
      for (const auto& [lot, pieces] : lots) {
        made.lines.push_back({picture_of(item), fmt::format("{} × {}, {}", pieces, name,
                                                            lot_on_paper(language_, lot, {}))});
      }
    };
    add_lots(part.lent);
    if (part.spares == 0) return;
    if (!part.stops.empty()) {
      made.lines.push_back(
          {Pictogram::warning,
           language_.filled("card.pack.ask", fmt::format("{} × {}", part.spares, name))});
      return;
    }
    add_lots(part.take);
    if (part.to_order > 0) {
      made.lines.push_back(
          {picture_of(item),
           language_.filled("card.pack.to_get", fmt::format("{} × {}", part.to_order, name))});
    }
  }

  /// What the suspension needs on a side and nobody recorded, in one line.
  void add_unknown(PicturedSection& made, Side side) const {
    std::vector<std::string> names;
    for (const auto& [of, function] : check_.unknown) {
      if (of == side) names.push_back(function_on_paper(language_, function));
    }
    if (names.empty()) return;
    made.lines.push_back(
        {Pictogram::question,
         language_.filled("card.worn.unknown", fmt::format("{}", fmt::join(names, "; ")))});
  }

  /// What is worn on a side, a line each item: lots stand on the list of parts.
  void add_worn(PicturedSection& made, const std::vector<PartsAlike>& parts, Side side) const {
    std::vector<std::pair<ItemCode, std::size_t>> pieces;
    for (const auto& part : parts) {
      if (part.side != side) continue;
      const auto same =
          std::ranges::find(pieces, part.item, &std::pair<ItemCode, std::size_t>::first);
      if (same == pieces.end()) {
        pieces.emplace_back(part.item, part.units.size());
      } else {
        same->second += part.units.size();
      }
    }
    for (const auto& [code, count] : pieces) {
      const auto* item = index_.item(code);
      const auto name = part_on_paper(language_, item, code);
      made.lines.push_back(
          {picture_of(item), count > 1 ? fmt::format("{} × {}", count, name) : name});
    }
  }

  const PaperLanguage& language_;
  const Clinic& clinic_;
  const TravelCheck& check_;
  ClinicIndex index_;
  Date today_;
};

}  // namespace

exchange::TravelCard travel_card(const PaperLanguage& language, const Clinic& clinic,
                                 const TravelCheck& check, Date today, bool name) {
  const Card from{language, clinic, check, today};
  const PatientRef patient{check.request.patient};
  exchange::TravelCard card;
  card.title = {Pictogram::suitcase, language.text("card.title"), true};
  card.whose = from.whose(name);
  card.reacts = reactions_on_paper(language, clinic, patient);
  card.pack = from.pack();
  card.worn = from.worn();
  card.fails.heading = {Pictogram::warning, language.text("card.fails"), true};
  card.fails.lines = when_it_fails(language, clinic, patient, today);
  card.care = from.care();
  card.clinic = from.clinic();
  card.left_out = language.text("card.left_out");
  card.cautions = {
      fmt::format("{} {}", language.text("caution.ask"), language.text("caution.maker")),
      fmt::format("{} {}", language.text("caution.judgement"),
                  language.filled("caution.records", language.date(today)))};
  return card;
}

Expected<int> print_travel_card(const Clinic& clinic, const TravelCheck& check,
                                const PatientPaper& how, Date today, const std::string& path) {
  const auto languages = languages_of(how);
  if (!languages) return tl::unexpected{languages.error()};
  std::vector<exchange::TravelCard> cards;
  for (const auto* language : *languages) {
    cards.push_back(travel_card(*language, clinic, check, today, how.names));
  }
  return exchange::write_travel_cards(cards, how.paper, path);
}

}  // namespace sparewell::desk

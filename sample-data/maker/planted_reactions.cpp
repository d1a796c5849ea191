#include "planted_reactions.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

namespace sparewell::sample {
namespace {

/// Parts of one material on one side of a patient, from the first to the last.
struct Stretch {
  Date from;
  Date until;

  [[nodiscard]] int length() const { return days_between(from, until); }
};

struct Wearer {
  PatientRef patient;
  Side side = Side::left;
  std::map<Material, Stretch> worn;  ///< liners and sleeves
  Stretch all;
};

std::vector<Wearer> wearers_of(const Clinic& clinic, Date until) {
  const ClinicIndex index{clinic};
  std::map<std::pair<std::string, Side>, Wearer> found;
  for (const Unit& unit : clinic.units) {
    const Item& item = *index.item(unit.item);
    if (item.kind != Kind::liner && item.kind != Kind::sleeve) continue;
    if (unit.share == 0.0) continue;
    Wearer& wearer = found[{unit.patient.text, unit.side}];
    wearer.patient = unit.patient;
    wearer.side = unit.side;
    const Stretch worn{unit.issued_on, unit.ended_on.value_or(until)};
    if (wearer.worn.empty()) wearer.all = worn;
    auto& stretch = wearer.worn.emplace(item.material, worn).first->second;
    for (Stretch* each : {&stretch, &wearer.all}) {
      *each = {std::min(each->from, worn.from), std::max(each->until, worn.until)};
    }
  }
  std::vector<Wearer> made;
  for (const auto& [key, wearer] : found) {
    if (wearer.all.until == until) made.push_back(wearer);
  }
  return made;
}

double share(const Stretch& part, const Stretch& all) {
  return static_cast<double>(part.length()) / std::max(1, all.length());
}

void add(Clinic& clinic, const Wearer& wearer, Date began_on, std::vector<std::string> signs) {
  clinic.reactions.push_back(
      {wearer.patient, wearer.side, began_on, began_on + days{9}, std::move(signs), ""});
}

/// Four reactions while a material was worn, one at another time.
void plant_suspect(Clinic& clinic, Date until, std::vector<Planted>& planted) {
  for (const Wearer& wearer : wearers_of(clinic, until)) {
    for (const auto& [material, stretch] : wearer.worn) {
      const double part = share(stretch, wearer.all);
      if (wearer.all.length() < 700 || stretch.length() < 150 || part > 0.4) continue;
      for (int i = 1; i <= 4; ++i) {
        add(clinic, wearer, stretch.from + days{stretch.length() * i / 5},
            i % 2 == 0 ? std::vector<std::string>{"itching", "blisters"}
                       : std::vector<std::string>{"itching", "redness"});
      }
      const bool later = days_between(stretch.until, wearer.all.until) > 200;
      add(clinic, wearer, later ? wearer.all.until - days{100} : wearer.all.from + days{100},
          {"redness"});
      planted.push_back({"reactions with a suspect", "reactions.csv", wearer.patient.text,
                         fmt::format("four of five while {} was worn", word(material))});
      return;
    }
  }
}

/// Three reactions of somebody who wore the same materials all the time.
void plant_unclear(Clinic& clinic, Date until, std::vector<Planted>& planted) {
  for (const Wearer& wearer : wearers_of(clinic, until)) {
    const bool always = std::ranges::all_of(
        wearer.worn, [&](const auto& each) { return share(each.second, wearer.all) > 0.97; });
    if (!always || wearer.all.length() < 500) continue;
    for (int i = 1; i <= 3; ++i) {
      add(clinic, wearer, wearer.all.from + days{wearer.all.length() * i / 4}, {"rash"});
    }
    planted.push_back({"reactions that tell nothing", "reactions.csv", wearer.patient.text,
                       "the same materials were worn all the time"});
    return;
  }
}

}  // namespace

std::vector<Planted> plant_reactions(Clinic& clinic, Date until) {
  std::vector<Planted> planted;
  plant_suspect(clinic, until, planted);
  plant_unclear(clinic, until, planted);
  return planted;
}

}  // namespace sparewell::sample

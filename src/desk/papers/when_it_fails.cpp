#include "desk/papers/when_it_fails.hpp"

#include "care/worn.hpp"

namespace sparewell::desk {
namespace {

using exchange::Pictogram;
using exchange::PicturedWords;

bool is_arm(Level level) {
  return level == Level::transradial || level == Level::transhumeral;
}

}  // namespace

std::vector<PicturedWords> when_it_fails(const PaperLanguage& language, const Clinic& clinic,
                                         const PatientRef& patient, Date day) {
  const ClinicIndex index{clinic};
  bool arm = false;
  bool leg = false;
  for (const Side side : {Side::left, Side::right}) {
    const auto worn = care::worn_on(clinic, index, patient, side, day);
    if (worn.prosthesis == nullptr) continue;
    (is_arm(worn.prosthesis->level) ? arm : leg) = true;
  }
  std::vector<PicturedWords> made;
  // Where nothing is known of a prosthesis, a fall is what there is to fear.
  if (leg || !arm) made.push_back({Pictogram::crutches, language.text("fails.leg"), true});
  if (arm) made.push_back({Pictogram::warning, language.text("fails.arm"), true});
  made.push_back({Pictogram::take_off, language.text("fails.take_off")});
  made.push_back({Pictogram::tool, language.text("fails.spare")});
  made.push_back({Pictogram::telephone, language.text("fails.help")});
  return made;
}

}  // namespace sparewell::desk

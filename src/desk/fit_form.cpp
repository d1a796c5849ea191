#include "desk/fit_form.hpp"

#include "clinic/say.hpp"
#include "desk/fit_words.hpp"

namespace sparewell::desk {
namespace {

constexpr days least_drawn{90};

}  // namespace

std::vector<std::string> limb_names(const FitShown& shown) {
  if (shown.curves.empty()) return {said("nothing measured")};
  std::vector<std::string> made;
  for (const LimbCurve& curve : shown.curves) made.push_back(curve.name);
  return made;
}

std::string fit_introduction(const Day& day, const PatientRef& patient) {
  return say(
      "For {}. The drawing has the measurements, the trend with the span that holds "
      "the limb with 80 % chance, and the sizes that are worn.",
      patient_words(day, patient));
}

std::string fit_first_day(const Day& day) {
  return iso_text(day.today() + days{fit_days});
}

FitShown show_fit(const Day& day, const PatientRef& patient, const std::string& by) {
  const Date today = day.today();
  const auto read = parse_iso_date(by);
  const bool ahead = read && *read >= today && *read <= today + days{care::most_foreseen_days};
  const Date until = ahead ? *read : today + days{fit_days};
  FitShown made;
  made.reference = patient.text;
  made.curves = limb_curves(day.clinic(), patient, today, std::max(until, today + least_drawn));
  made.words =
      ahead ? fit_text(fit_report(day.clinic(), patient, std::nullopt, until, today))
            : say("Write the day as {}: from today on, within three years.", fit_first_day(day));
  return made;
}

}  // namespace sparewell::desk

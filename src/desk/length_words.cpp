#include "desk/length_words.hpp"

#include <charconv>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

constexpr double cm_per_inch = 2.54;  // exactly; NIST Special Publication 811, appendix B
LengthUnit unit_shown = LengthUnit::cm;

double in_unit(double cm) {
  return cm / cm_of_unit();
}

}  // namespace

LengthUnit length_unit() {
  return unit_shown;
}

void use_length_unit(LengthUnit unit) {
  unit_shown = unit;
}

double cm_of_unit() {
  return unit_shown == LengthUnit::cm ? 1 : cm_per_inch;
}

std::string length_unit_words() {
  return unit_shown == LengthUnit::cm ? said("cm") : said("in");
}

std::string length_words(double cm) {
  return unit_shown == LengthUnit::cm ? say("{:.1f} cm", cm) : say("{:.2f} in", in_unit(cm));
}

std::string short_length_words(double cm) {
  return unit_shown == LengthUnit::cm ? say("{:g} cm", cm) : say("{:.3g} in", in_unit(cm));
}

std::string length_range_words(double low_cm, double high_cm) {
  return unit_shown == LengthUnit::cm
             ? say("{:.1f} to {:.1f} cm", low_cm, high_cm)
             : say("{:.2f} to {:.2f} in", in_unit(low_cm), in_unit(high_cm));
}

std::string length_number(double cm) {
  return unit_shown == LengthUnit::cm ? say("{:g}", cm) : say("{:.3g}", in_unit(cm));
}

std::optional<double> typed_length(const std::string& text) {
  std::string number = text;
  auto unit = unit_shown;
  const auto ends = [&](std::string_view ending) {
    if (!number.ends_with(ending)) return false;
    number.resize(number.size() - ending.size());
    return true;
  };
  if (ends("cm")) {
    unit = LengthUnit::cm;
  } else if (ends("in") || ends("\"")) {
    unit = LengthUnit::inch;
  }
  while (number.ends_with(' ')) number.pop_back();
  for (auto& c : number) {
    if (c == ',') c = '.';
  }
  double value = 0;
  const auto* end = number.data() + number.size();
  const auto [stopped, error] = std::from_chars(number.data(), end, value);
  if (error != std::errc{} || stopped != end || number.empty()) return std::nullopt;
  return unit == LengthUnit::cm ? value : value * cm_per_inch;
}

}  // namespace sparewell::desk

#include "desk/clinic_form.hpp"

#include <charconv>
#include <optional>

#include <fmt/format.h>

namespace sparewell::desk {
namespace {

constexpr double least_percent = 50;
constexpr double most_percent = 99.9;

std::optional<double> read_number(std::string text) {
  // Both decimal signs are typed by people; thousands separators make no sense in a percentage.
  for (auto& c : text) {
    if (c == ',') c = '.';
  }
  double value = 0;
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || stopped != end) return std::nullopt;
  return value;
}

}  // namespace

ClinicForm clinic_form(const ClinicSettings& settings) {
  return {settings.name,
          settings.ship_to,
          settings.currency.code,
          settings.main_place,
          fmt::format("{:.6g}", settings.service_target * 100),
          settings.records_begin ? iso_text(*settings.records_begin) : "",
          settings.approval_above ? plain_text(*settings.approval_above) : ""};
}

Expected<ClinicSettings> read_clinic_form(const ClinicForm& form) {
  const auto currency = parse_currency(form.currency);
  if (!currency) return refuse("Currency: write its three letters, for example EUR.");
  if (form.main_place.empty()) return refuse("Main place: say where orders are delivered.");
  if (is_quarantine(form.main_place)) {
    return refuse("Main place: orders cannot be delivered to a quarantine; name another place.");
  }
  const auto percent = read_number(form.service_target);
  if (!percent || *percent < least_percent || *percent > most_percent) {
    return refuse("Service target: write a percentage from 50 to 99.9, for example 95.");
  }
  const auto begin = parse_iso_date(form.records_begin);
  if (!form.records_begin.empty() && !begin) {
    return refuse(
        "Records begin: write the day as 2024-01-31, or leave it empty when every part was "
        "recorded "
        "from its issue to its end.");
  }
  std::optional<Money> limit;
  if (!form.approval_above.empty()) {
    const auto sum = parse_money(form.approval_above, *currency);
    if (!sum || sum->minor < 0) {
      return refuse(
          "Approval above: write a sum such as 500.00, or leave it empty when no order needs "
          "approval.");
    }
    limit = *sum;
  }
  return ClinicSettings{form.name,      form.ship_to, *currency, form.main_place,
                        *percent / 100, begin,        limit};
}

}  // namespace sparewell::desk

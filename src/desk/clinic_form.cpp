#include "desk/clinic_form.hpp"

#include <charconv>
#include <optional>

#include "clinic/say.hpp"
#include "desk/typed_amounts.hpp"

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

std::string amount_text(const std::optional<Money>& amount) {
  return amount ? plain_text(*amount) : "";
}

std::string day_text(const std::optional<Date>& day) {
  return day ? iso_text(*day) : "";
}

/// Nothing where nothing is written.
Expected<std::optional<Date>> read_day(const std::string& text, std::string_view field) {
  const auto day = parse_iso_date(text);
  if (day || text.empty()) return day;
  return refuse(say("{}: write the day as 2024-01-31, or leave it empty.", field));
}

/// Nothing where nothing is written.
Expected<std::optional<Money>> read_amount(std::string text, const Currency& currency,
                                           std::string_view field) {
  if (text.empty()) return std::nullopt;
  const auto amount = typed_amount(text, currency);
  if (amount && amount->minor >= 0) return *amount;
  return refuse(say("{}: write an amount such as 150.00, or leave it empty.", field));
}

Expected<OrderCosts> read_costs(const ClinicForm& form, const Currency& currency) {
  const auto shortage = read_amount(form.shortage_cost, currency, said("Cost of a missing piece"));
  if (!shortage) return tl::unexpected{shortage.error()};
  const auto line = read_amount(form.line_cost, currency, said("Cost of an order line"));
  if (!line) return tl::unexpected{line.error()};
  const auto percent = read_number(form.holding_percent);
  if (!percent || *percent < 0 || *percent > 100) {
    return refuse(
        say("Keeping a piece for a year: write a percentage from 0 to 100, for example 20."));
  }
  return OrderCosts{*percent / 100, *shortage, *line};
}

}  // namespace

ClinicForm clinic_form(const ClinicSettings& settings) {
  return {settings.name,
          settings.ship_to,
          settings.currency.code,
          settings.main_place,
          say("{:.6g}", settings.service_target * 100),
          day_text(settings.records_begin),
          amount_text(settings.costs.shortage),
          say("{:.6g}", settings.costs.holding_rate * 100),
          amount_text(settings.costs.line),
          amount_text(settings.approval_above),
          day_text(settings.billing_begins),
          day_text(settings.papers_begin)};
}

Expected<ClinicSettings> read_clinic_form(const ClinicForm& form) {
  const auto currency = parse_currency(form.currency);
  if (!currency) return refuse(say("Currency: write its three letters, for example EUR."));
  if (form.main_place.empty()) return refuse(say("Main place: say where orders are delivered."));
  if (is_quarantine(form.main_place)) {
    return refuse(
        say("Main place: orders cannot be delivered to a quarantine; name another place."));
  }
  const auto percent = read_number(form.service_target);
  if (!percent || *percent < least_percent || *percent > most_percent) {
    return refuse(say("Service target: write a percentage from 50 to 99.9, for example 95."));
  }
  const auto begin = parse_iso_date(form.records_begin);
  if (!form.records_begin.empty() && !begin) {
    return refuse(
        say("Records begin: write the day as 2024-01-31, or leave it empty when every part was "
            "recorded from its issue to its end."));
  }
  const auto costs = read_costs(form, *currency);
  if (!costs) return tl::unexpected{costs.error()};
  const auto limit = read_amount(form.approval_above, *currency, said("Approval above"));
  if (!limit) return tl::unexpected{limit.error()};
  const auto billing = read_day(form.billing_begins, said("Billing begins"));
  if (!billing) return tl::unexpected{billing.error()};
  const auto papers = read_day(form.papers_begin, said("Papers begin"));
  if (!papers) return tl::unexpected{papers.error()};
  return ClinicSettings{form.name, form.ship_to, *currency, form.main_place, *percent / 100,
                        begin,     *costs,       *limit,    *billing,        *papers};
}

}  // namespace sparewell::desk

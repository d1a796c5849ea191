#include "planted_claims.hpp"

#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "calendar.hpp"

namespace sparewell::sample {
namespace {

const char* file = "claims.csv";

/// Works on claim lines of the last year, each of them once.
class Planter {
 public:
  Planter(Clinic& clinic, Random& random, Date until, std::vector<Planted>& planted)
      : clinic_{clinic}, random_{random}, until_{until}, planted_{planted} {}

  using Fits = std::function<bool(const ClaimLine&)>;

  /// A line that fits and has not been used; the end of the list when there is none.
  std::vector<ClaimLine>::iterator next(const Fits& fits) {
    auto& lines = clinic_.claim_lines;
    for (int attempt = 0; attempt < 4000 && !lines.empty(); ++attempt) {
      const int last = static_cast<int>(lines.size()) - 1;
      const auto found = lines.begin() + random_.whole(0, last);
      const bool used = std::ranges::find(used_, found->claim_ref) != used_.end();
      if (used || found->service_date < until_ - days{330} || !fits(*found)) continue;
      used_.push_back(found->claim_ref);
      return found;
    }
    return lines.end();
  }

  void change(const char* what, const Fits& fits,
              const std::function<std::string(ClaimLine&)>& by) {
    const auto line = next(fits);
    if (line == clinic_.claim_lines.end()) return;
    const std::string detail = by(*line);
    note(what, *line, detail);
  }

  void note(const char* what, const ClaimLine& line, const std::string& detail) {
    planted_.push_back({what, file, line.patient.text,
                        fmt::format("{} {} of {}: {}", line.claim_ref, line.code,
                                    iso_text(line.service_date), detail)});
  }

  void leave_out(const Fits& fits) {
    const auto line = next(fits);
    if (line == clinic_.claim_lines.end()) return;
    note("issued, not billed", *line, "line left out");
    clinic_.claim_lines.erase(line);
  }

  void add_like(const char* what, const Fits& fits,
                const std::function<std::string(ClaimLine&)>& by) {
    const auto line = next(fits);
    if (line == clinic_.claim_lines.end()) return;
    ClaimLine more = *line;
    const std::string detail = by(more);
    note(what, more, detail);
    clinic_.claim_lines.insert(line + 1, more);
  }

 private:
  Clinic& clinic_;
  Random& random_;
  Date until_;
  std::vector<Planted>& planted_;
  std::vector<std::string> used_;
};

bool any_line(const ClaimLine&) {
  return true;
}
bool is_liner(const ClaimLine& line) {
  return line.code == "L5673" || line.code == "L5679";
}
bool is_single_liner(const ClaimLine& line) {
  return is_liner(line) && line.quantity == 1;
}
bool is_sleeve(const ClaimLine& line) {
  return line.code == "L5685" && line.quantity == 1;
}
bool is_several(const ClaimLine& line) {
  return line.quantity >= 4;
}

std::string swap_side(ClaimLine& line) {
  line.side = line.side == Side::left ? Side::right : Side::left;
  line.modifiers.front() = line.side == Side::left ? "LT" : "RT";
  return "billed for the other side";
}

std::string double_quantity(ClaimLine& line) {
  const int before = line.quantity;
  line.quantity *= 2;
  line.charge = *line.charge * 2;
  return fmt::format("{} billed, {} handed out", line.quantity, before);
}

std::string lose_charge(ClaimLine& line) {
  line.charge.reset();
  return "charge missing";
}

}  // namespace

void plant_in_claims(Clinic& clinic, Random& random, Date until, std::vector<Planted>& planted) {
  Planter planter{clinic, random, until, planted};
  planter.leave_out(is_liner);
  planter.leave_out(is_sleeve);
  planter.leave_out(is_several);
  planter.change("wrong side", is_single_liner, swap_side);
  planter.change("wrong quantity", is_several, double_quantity);
  planter.change("wrong quantity", is_sleeve, double_quantity);
  planter.change("no charge", any_line, lose_charge);
  planter.add_like("duplicate line", is_sleeve, [](ClaimLine& line) {
    line.claim_ref += "-B";
    return std::string{"billed a second time under another claim"};
  });
  for (int i = 0; i < 2; ++i) {
    planter.add_like("billed, not issued", any_line, [&](ClaimLine& line) {
      line.claim_ref += "-C";
      line.service_date = working_day_from(std::min(until - days{3}, line.service_date + days{45}));
      line.code = "L7600";
      line.quantity = 1;
      line.charge = Money{8900, Currency{"EUR"}};
      return std::string{"nothing of this code was handed out"};
    });
  }
}

}  // namespace sparewell::sample

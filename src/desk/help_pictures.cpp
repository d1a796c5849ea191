#include "desk/help_pictures.hpp"

#include <array>

#include "desk/help_pictures/examples.hpp"

namespace sparewell::desk {
namespace {

struct HelpExample {
  std::string_view page_id;
  picture::Maker (*make)();
};

constexpr std::array help_examples{
    HelpExample{"ordering", ordering_example}, HelpExample{"receiving", receiving_example},
    HelpExample{"patients", patients_example}, HelpExample{"sensitivities", sensitivities_example},
    HelpExample{"travel", travel_example},     HelpExample{"billing", billing_example},
    HelpExample{"import", import_example},     HelpExample{"window", window_example}};

}  // namespace

picture::Maker help_picture(std::string_view page_id) {
  for (const auto& example : help_examples) {
    if (example.page_id == page_id) return example.make();
  }
  return {};
}

}  // namespace sparewell::desk

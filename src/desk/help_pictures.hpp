/// The pictures of the help, of invented figures.
#pragma once

#include <string_view>

#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// The picture of the help page of this id (see HelpPage::id); empty for an id that has none. Every
/// picture says that it is an example, and none says anything of a person or a clinic that exists.
[[nodiscard]] picture::Maker help_picture(std::string_view page_id);

}  // namespace sparewell::desk

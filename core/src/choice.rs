//! Choices of one word: the words of the document, in one place each.

/// Declares enums whose variants are one word of the document each.
macro_rules! choices {
    ($($(#[doc = $doc:literal])+ $name:ident { $($(#[doc = $meaning:literal])+ $variant:ident = $word:literal,)+ })+) => {
        $(
            $(#[doc = $doc])+
            #[derive(
                Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash,
                serde::Serialize, serde::Deserialize, schemars::JsonSchema,
            )]
            pub enum $name {
                $($(#[doc = $meaning])+ #[serde(rename = $word)] $variant,)+
            }

            impl $name {
                /// Every choice.
                pub const ALL: &'static [$name] = &[$($name::$variant,)+];

                /// The choice of a word.
                ///
                /// # Errors
                /// [`ErrorKind::UnknownChoice`](crate::ErrorKind::UnknownChoice), with the nearest word where one is near.
                pub fn from_word(word: &str) -> Result<Self, crate::Error> {
                    let words: &[&'static str] = &[$($word,)+];
                    let found = $name::ALL.iter().copied().find(|choice| choice.word() == word);
                    found.ok_or_else(|| crate::job::unknown_choice(word, words))
                }

                /// The word of the document.
                #[must_use]
                pub const fn word(self) -> &'static str {
                    match self { $($name::$variant => $word,)+ }
                }

                /// What it means, in words.
                #[must_use]
                pub const fn meaning(self) -> &'static str {
                    match self { $($name::$variant => concat!($($meaning),+).trim_ascii(),)+ }
                }

                /// The word as it is read: spaces for underscores.
                #[must_use]
                pub fn spoken(self) -> String {
                    self.word().replace('_', " ")
                }
            }
        )+
    };
}
pub(crate) use choices;
